/**
 * Lower triangle L with L Lᵀ = matrix, rows one after another; undefined where the matrix is not positive definite.
 * @param matrix symmetric, size × size, rows one after another
 */
export function cholesky(matrix: Float64Array, size: number): Float64Array | undefined {
  const lower = new Float64Array(size * size);
  for (let i = 0; i < size; i++)
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i * size + j];
      for (let k = 0; k < j; k++) sum -= lower[i * size + k] * lower[j * size + k];
      if (i !== j) lower[i * size + j] = sum / lower[j * size + j];
      else if (sum > 0) lower[i * size + i] = Math.sqrt(sum);
      else return undefined;
    }
  return lower;
}

/** L⁻¹ b. */
export function solveLower(lower: Float64Array, b: ArrayLike<number>): Float64Array {
  const size = b.length;
  const x = Float64Array.from(b);
  for (let i = 0; i < size; i++) {
    for (let k = 0; k < i; k++) x[i] -= lower[i * size + k] * x[k];
    x[i] /= lower[i * size + i];
  }
  return x;
}

/** L⁻ᵀ b. With L Lᵀ a precision, it turns independent standard normal numbers into errors of that precision. */
export function solveUpper(lower: Float64Array, b: ArrayLike<number>): Float64Array {
  const size = b.length;
  const x = Float64Array.from(b);
  for (let i = size - 1; i >= 0; i--) {
    for (let k = i + 1; k < size; k++) x[i] -= lower[k * size + i] * x[k];
    x[i] /= lower[i * size + i];
  }
  return x;
}
