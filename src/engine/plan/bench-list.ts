/**
 * The stages of a build as a bench list: what is done, what can be done, what it waits for, and what is next.
 * Order of the craft: common practice, no source. Nothing here is stored; it follows from the record.
 */
export interface StageFact {
  id: string;
  name: string;
  done: boolean;
  /** Words for what it waits for besides the stages before it, such as a cure with its hour. */
  waitsFor?: string;
  /** Ids of stages that come first. */
  after: readonly string[];
}
type StageStatus = 'done' | 'next' | 'ready' | 'waits';
export interface BenchStage {
  id: string;
  name: string;
  status: StageStatus;
  /** Why it waits. */
  why?: string;
}

/** The first stage that can be worked on is next; others that can are ready. */
export function benchList(facts: readonly StageFact[]): BenchStage[] {
  const byId = new Map(facts.map((fact) => [fact.id, fact]));
  let nextFound = false;
  return facts.map(({ id, name, done, waitsFor, after }): BenchStage => {
    if (done) return { id, name, status: 'done' };
    const missing = after.flatMap((before) => {
      const stage = byId.get(before);
      if (!stage) throw new Error(`stage ${id} comes after ${before}, which is no stage`);
      return stage.done ? [] : [stage.name];
    });
    if (missing.length > 0) return { id, name, status: 'waits', why: `after ${missing.join(', ')}` };
    if (waitsFor !== undefined) return { id, name, status: 'waits', why: waitsFor };
    const status = nextFound ? 'ready' : 'next';
    nextFound = true;
    return { id, name, status };
  });
}

/** Minutes logged per stage, and all together. */
export function sumMinutes(logged: readonly { stage: string; minutes: number }[]) {
  const byStage = new Map<string, number>();
  for (const { stage, minutes } of logged) byStage.set(stage, (byStage.get(stage) ?? 0) + minutes);
  return { byStage, totalMinutes: logged.reduce((sum, { minutes }) => sum + minutes, 0) };
}
