import { render } from "preact";
import { PracticeSheet } from "./PracticeSheet.tsx";

const page = document.getElementById("page");
if (page) render(<PracticeSheet />, page);
