import { render } from "preact";
import { TaskPane } from "./TaskPane.tsx";

const page = document.getElementById("page");
if (page) render(<TaskPane />, page);
