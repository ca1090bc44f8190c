import webpack from "webpack";
import { practiceBundle } from "./practiceBundle.ts";

/**
 * Builds the practice sheet into a folder, which any static host can serve.
 *
 * @throws Error with what webpack says when it does not build
 */
export async function bundlePractice(outputFolder: string): Promise<void> {
  const compiler = webpack(practiceBundle(outputFolder));
  const stats = await new Promise<webpack.Stats | undefined>((resolve, reject) =>
    compiler.run((error, result) => (error ? reject(error) : resolve(result))),
  );
  await new Promise((resolve) => compiler.close(resolve));
  if (stats?.hasErrors()) throw new Error(stats.toString({ all: false, errors: true }));
}
