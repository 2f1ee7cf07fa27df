/** A thing to measure over a list of inputs. It returns a number made of its results, so that none is optimized away or kept. */
export interface Subject {
  name: string;
  /** Runs over the inputs from `start` on, `count` of them. */
  run(start: number, count: number): number | Promise<number>;
  /** Inputs of one turn: fewer for slow ones. */
  count: number;
}

export interface Timing {
  /** Median of the nanoseconds for one input. */
  nanoseconds: number;
  /** Median of the ratios to the baseline measured right before and after. */
  ratio: number;
}

/** Measures in turns with the baseline, which comes first: medians over rounds, after a few that do not count. */
export async function measureInTurns(
  subjects: readonly Subject[],
  inputs: number,
  rounds = 15,
  warmUp = 6,
): Promise<Map<string, Timing>> {
  const [baseline] = subjects;
  if (baseline === undefined) throw new RangeError('nothing to measure');
  const times = new Map(subjects.map(({ name }) => [name, { own: [] as number[], ratios: [] as number[] }]));
  let sink = 0;
  for (let round = -warmUp; round < rounds; round += 1)
    for (const subject of subjects) {
      const against = Math.min(inputs, baseline.count);
      // Both over the same inputs: others may have left the caches.
      const start = Math.abs(round * 997) % Math.max(1, inputs - Math.max(subject.count, against) + 1);
      const time = async (each: Subject, from: number, count: number) => {
        const before = process.hrtime.bigint();
        sink += await each.run(from, count);
        return Number(process.hrtime.bigint() - before) / count;
      };
      const first = await time(baseline, start, against);
      const own = await time(subject, start, subject.count);
      const second = await time(baseline, start, against);
      if (round < 0) continue;
      const kept = times.get(subject.name);
      kept?.own.push(own);
      kept?.ratios.push((2 * own) / (first + second));
    }
  if (Number.isNaN(sink)) throw new RangeError('a subject gave no number');
  return new Map([...times].map(([name, { own, ratios }]) => [name, { nanoseconds: median(own), ratio: median(ratios) }]));
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[sorted.length >> 1] ?? Number.NaN;
}
