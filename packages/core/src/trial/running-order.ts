import { accepted, type Remark, type Result, refused, remark } from '../remark/index.ts';
import { type RunningOrder, STEP_IDS, type StepChoice, type StepId } from './model.ts';

/** What a person may set of a step and of the whole. Titles longer than these do not fit over a tall picture. */
export const RUNNING_ORDER_LIMITS = {
  secondsLow: 0.5,
  secondsHigh: 60,
  speedLow: 0.25,
  speedHigh: 4,
  titleLength: 200,
} as const;

/**
 * A running order as it came from a form, a file or the command line, made whole: what a step does not say is as worked out
 * (shown, own title, own seconds), and a missing speed is 1. Refused with a sentence for each fault.
 *
 * @example checkedRunningOrder({ steps: [{ id: 'why', isShown: false }], speed: 1.5 })
 */
export function checkedRunningOrder(given: unknown): Result<RunningOrder> {
  if (!isObject(given) || (given.steps !== undefined && !Array.isArray(given.steps)))
    return refused(fault('A running order is { steps: [ … ], speed }, and steps is a list.'));
  const speed = given.speed ?? 1;
  const faults = [
    ...outside('The speed', speed, RUNNING_ORDER_LIMITS.speedLow, RUNNING_ORDER_LIMITS.speedHigh, {
      unit: 'times',
      hint: '1 is as worked out, 2 twice as fast',
    }),
  ];
  const seen = new Set<string>();
  const steps = ((given.steps ?? []) as unknown[]).flatMap((one, place): StepChoice[] => {
    const read = stepFrom(one, place + 1);
    faults.push(...read.faults);
    if (read.step === null) return [];
    if (seen.has(read.step.id)) faults.push(fault(`Step "${read.step.id}" is named twice: name it once.`));
    seen.add(read.step.id);
    return [read.step];
  });
  const [first, ...more] = faults;
  return first ? refused(first, ...more) : accepted({ steps, speed: speed as number });
}

function stepFrom(given: unknown, place: number): { step: StepChoice | null; faults: Remark[] } {
  const id = isObject(given) ? given.id : undefined;
  if (!isObject(given) || !STEP_IDS.includes(id as StepId)) {
    const named = typeof id === 'string' ? `"${id.slice(0, 40)}"` : 'no name';
    return {
      step: null,
      faults: [
        fault(`Step ${place} of the running order has ${named}; the steps are ${STEP_IDS.join(', ')}.`),
      ],
    };
  }
  const { isShown = true, title = null, seconds = null } = given;
  const faults: Remark[] = [];
  if (typeof isShown !== 'boolean')
    faults.push(fault(`Whether step "${id}" is shown (isShown) is true or false.`));
  if (title !== null && (typeof title !== 'string' || title.length > RUNNING_ORDER_LIMITS.titleLength))
    faults.push(
      fault(
        `The title of step "${id}" is ${typeof title === 'string' ? `${title.length} letters long` : 'no text'}; it may have up to ${RUNNING_ORDER_LIMITS.titleLength}. Shorten it, or leave it empty for the one that is worked out.`,
      ),
    );
  if (seconds !== null)
    faults.push(
      ...outside(`Step "${id}"`, seconds, RUNNING_ORDER_LIMITS.secondsLow, RUNNING_ORDER_LIMITS.secondsHigh, {
        unit: 's',
        hint: 'leave it empty for the time that is worked out',
      }),
    );
  const own = typeof title === 'string' && title.trim() !== '' ? title.trim() : null;
  return {
    step: {
      id: id as StepId,
      isShown: isShown === true,
      title: own,
      seconds: typeof seconds === 'number' ? seconds : null,
    },
    faults,
  };
}

function outside(
  what: string,
  value: unknown,
  low: number,
  high: number,
  { unit, hint }: { unit: string; hint: string },
): Remark[] {
  if (typeof value === 'number' && value >= low && value <= high) return [];
  const is = typeof value === 'number' ? `${value} ${unit}` : 'not a number';
  return [fault(`${what} is ${is}; it may be ${low} to ${high} ${unit} (${hint}).`)];
}

const fault = (message: string): Remark => remark('refusal', 'running-order', message);

const isObject = (given: unknown): given is Record<string, unknown> =>
  typeof given === 'object' && given !== null && !Array.isArray(given);
