/** Types of the quadratic-programming package; its lists count from 1, so that place 0 of each is unused. */
declare module 'quadprog' {
  interface Answer {
    solution: number[];
    Lagrangian: number[]; // one a constraint, 0 where it is slack
    message: string; // empty where a solution was found
  }

  /** Least of x'Dx/2 - d'x with A'x >= b, the first `equalities` of them equal. D is positive definite and overwritten. */
  function solveQP(D: number[][], d: number[], A: number[][], b: number[], equalities?: number): Answer;

  const quadprog: { solveQP: typeof solveQP };
  export default quadprog;
}
