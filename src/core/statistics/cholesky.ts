/** The lower triangle L of a matrix with L Lᵀ = matrix, by rows. */
export type Triangle = readonly Float64Array[];

/**
 * Cholesky's factor of a symmetric matrix; undefined where a direction of it is settled by nothing (a pivot that is rounding).
 *
 * @param matrix rows of equal length
 * @example
 * cholesky([new Float64Array([4, 2]), new Float64Array([2, 5])])?.map((row) => [...row]) // → [[2, 0], [1, 2]]
 */
export function cholesky(matrix: readonly Float64Array[]): Triangle | undefined {
  const factor: Float64Array[] = [];
  for (const [i, row] of matrix.entries()) {
    const own = new Float64Array(matrix.length);
    for (let j = 0; j <= i; j++) {
      const other = j === i ? own : (factor[j] as Float64Array);
      let rest = row[j] as number;
      for (let k = 0; k < j; k++) rest -= (own[k] as number) * (other[k] as number);
      if (j < i) own[j] = rest / (other[j] as number);
      else if (rest <= 1e-10 * (row[i] as number)) return undefined;
      else own[i] = Math.sqrt(rest);
    }
    factor.push(own);
  }
  return factor;
}

/**
 * Solves L x = right, from the first row on.
 *
 * @example
 * [...forward([new Float64Array([2, 0]), new Float64Array([1, 2])], [4, 4])] // → [2, 1]
 */
export function forward(factor: Triangle, right: ArrayLike<number>): Float64Array {
  const x = new Float64Array(factor.length);
  factor.forEach((row, i) => {
    let rest = right[i] as number;
    for (let k = 0; k < i; k++) rest -= (row[k] as number) * (x[k] as number);
    x[i] = rest / (row[i] as number);
  });
  return x;
}

/**
 * Solves Lᵀ x = right, from the last row back.
 *
 * @example
 * [...backward([new Float64Array([2, 0]), new Float64Array([1, 2])], [5, 2])] // → [2, 1]
 */
export function backward(factor: Triangle, right: ArrayLike<number>): Float64Array {
  const x = new Float64Array(factor.length);
  for (let i = factor.length - 1; i >= 0; i--) {
    let rest = right[i] as number;
    for (let k = i + 1; k < factor.length; k++) rest -= (factor[k]?.[i] as number) * (x[k] as number);
    x[i] = rest / (factor[i]?.[i] as number);
  }
  return x;
}
