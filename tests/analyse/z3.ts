import { init, killThreads } from 'z3-solver';

/** A running z3, one question at a time. */
export interface Z3 {
  /** For each switch of a script (SMT-LIB): whether it can be on. */
  ask(script: string, switches: readonly string[]): Promise<boolean[]>;
  /** Ends its threads, so that the process can end. */
  end(): Promise<void>;
}

export async function startZ3(): Promise<Z3> {
  const { Context, em } = await init();
  const { Solver, Bool } = Context('main');
  return {
    ask: async (script, switches) => {
      const solver = new Solver();
      solver.fromString(script);
      const found: boolean[] = [];
      for (const each of switches) {
        const result = await solver.check(Bool.const(each));
        if (result === 'unknown') throw new Error(`z3 does not know: ${solver.reasonUnknown()}`);
        found.push(result === 'sat');
      }
      solver.release();
      return found;
    },
    end: () => killThreads(em),
  };
}
