import type { ReachAsk } from '../../search.ts';

const BARE = /^\d[\d.,\s]*$/;

const UNITS = {
  us: { power: 'hp', speed: 'rpm', pressure: 'psi' },
  si: { power: 'kW', speed: 'rpm', pressure: 'kPa' },
};

/**
 * A question with a unit behind every bare number, that of the shop: who types 520 sees horsepower on the page.
 *
 * @example withUnit({ power: '520' }, 'us').power // '520 hp'
 */
export function withUnit(ask: ReachAsk, units: 'us' | 'si'): ReachAsk {
  const unit = UNITS[units];
  const told = (text: string, name: string) => (BARE.test(text.trim()) ? `${text.trim()} ${name}` : text);
  const { power, at, window, boostCap } = ask;
  return {
    ...ask,
    ...(power !== undefined && { power: told(power, unit.power) }),
    ...(at !== undefined && { at: told(at, unit.speed) }),
    ...(window !== undefined && {
      window: endsOf(window)
        .map((end) => told(end, unit.speed))
        .join('-'),
    }),
    ...(boostCap !== undefined && { boostCap: told(boostCap, unit.pressure) }),
  };
}

/** Both ends of a window as typed: `3000 rpm-6500 rpm`; '' where one is missing. */
export function endsOf(window: string | undefined): [from: string, to: string] {
  const [from = '', ...to] = (window ?? '').split(/\s*[-–]\s*/);
  return [from, to.join('-')];
}
