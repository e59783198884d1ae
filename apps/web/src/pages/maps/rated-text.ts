/** A rated point as typed, each with its unit; '' not known. */
export interface Rated {
  flow: string;
  pressureRatio: string;
  speed: string;
  efficiency: string;
  referencePressure: string;
  referenceTemperature: string;
  wheelExitDiameter: string;
  wheelInletDiameter: string;
}

export const BLANK_RATED: Rated = {
  flow: '',
  pressureRatio: '',
  speed: '',
  efficiency: '',
  referencePressure: '100 kPa',
  referenceTemperature: '25 °C',
  wheelExitDiameter: '',
  wheelInletDiameter: '',
};

const COLUMNS = [
  ['flow', 'flow'],
  ['pressureRatio', 'pressure ratio'],
  ['speed', 'speed'],
  ['efficiency', 'efficiency'],
] as const;

/** A rated point as the open CSV of a map: its units go into the heading, its figures into the one row. */
export function ratedText(rated: Rated): string {
  const header = [
    '# form: rated',
    `# reference pressure: ${rated.referencePressure}`,
    `# reference temperature: ${rated.referenceTemperature}`,
    `# wheel exit diameter: ${rated.wheelExitDiameter || 'unknown'}`,
    `# wheel inlet diameter: ${rated.wheelInletDiameter || 'unknown'}`,
  ];
  const said = COLUMNS.filter(([name]) => rated[name].trim() !== '').map(([name, heading]) => {
    const [, figure = '', unit = ''] = /^([^a-z%]*)(.*)$/i.exec(rated[name].trim()) ?? [];
    return { heading: unit === '' ? heading : `${heading} [${unit}]`, figure: figure.trim() };
  });
  const row = (cells: string[]) => cells.join(';');
  return [...header, row(said.map(({ heading }) => heading)), row(said.map(({ figure }) => figure)), ''].join(
    '\n',
  );
}
