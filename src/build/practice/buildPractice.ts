import { join } from "node:path";
import process from "node:process";
import { bundlePractice } from "./bundlePractice.ts";

await bundlePractice(join(process.cwd(), "dist", "practice"));
