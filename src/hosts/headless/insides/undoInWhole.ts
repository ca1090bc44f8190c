import type { DependencyOverride, IMutationInfo, IUndoRedoItem } from "@univerjs/core";
import type { UniverParts } from "../univerParts.ts";

// As many as people are used to; of its own the engine keeps 20.
const mostSteps = 100;
const resizes = /^sheet\.mutation\.(?:insert|remove)-(?:rows?|cols?)$/;

/**
 * The engine's service for undoing, put in its place: a sheet that grew under what was pasted beyond its last row stays as
 * long when that is undone. The engine takes the rows away before it empties their cells, stops there with half of it
 * undone, and takes away as many more rows at each further try.
 */
export function undoInWhole({ core }: UniverParts): DependencyOverride {
  const inPlace = (mutations: readonly IMutationInfo[]): IMutationInfo[] =>
    mutations.filter(({ id }) => !resizes.test(id));
  class UndoInWhole extends core.LocalUndoRedoService {
    override pushUndoRedo(step: IUndoRedoItem): void {
      const stack = this._getUndoStack(step.unitID, true);
      const earlier = stack.splice(0, stack.length - 1);
      const { undoMutations, redoMutations } = step;
      super.pushUndoRedo({ ...step, undoMutations: inPlace(undoMutations), redoMutations: inPlace(redoMutations) });
      stack.unshift(...earlier.slice(1 - mostSteps));
    }
  }
  return [[core.IUndoRedoService, { useClass: UndoInWhole, lazy: true }]];
}
