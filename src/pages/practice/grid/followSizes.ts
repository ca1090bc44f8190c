import { ICommandService, type Injector } from "@univerjs/core";

const resizing =
  /^sheet\.(?:mutation\.set-(?:worksheet-(?:col-width|row-)|(?:col|row)-(?:hidden|visible))|operation\.set-zoom-ratio)/;

/** Tells of each change that gives the cells of a sheet other places in the window, once it is drawn. */
export function followSizes(injector: Injector, onMoved: () => void): void {
  injector.get(ICommandService).onCommandExecuted(({ id }) => {
    if (resizing.test(id)) requestAnimationFrame(() => setTimeout(onMoved));
  });
}
