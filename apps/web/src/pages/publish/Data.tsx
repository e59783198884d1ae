import { Card } from '../../parts/Card.tsx';
import { MakeButton } from './MakeButton.tsx';
import type { Making } from './making.ts';
import styles from './publish.module.css';

const DATA = [
  {
    kind: 'table',
    format: 'xlsx',
    name: 'XLSX',
    what: 'Answer, speeds, conditions and a sheet for each pull; units beside the figures.',
  },
  {
    kind: 'table',
    format: 'csv',
    name: 'CSV',
    what: 'The same tables as text, with what each column means beside them.',
  },
  { kind: 'table', format: 'json', name: 'JSON', what: 'The same for a program.' },
  {
    kind: 'bundle',
    format: 'zip',
    name: 'Bundle',
    what: 'The whole trial with its pulls and their original files: another Pullbook opens it.',
  },
] as const;

/** The figures themselves, for who wants to reckon with them. */
export function Data(making: Making) {
  return (
    <Card title="Data">
      <ul className={styles.data}>
        {DATA.map(({ kind, format, name, what }) => (
          <li key={format}>
            <p>
              <strong>{name}</strong> {what}
            </p>
            <MakeButton
              {...making}
              ask={{ kinds: [kind], formats: [format] }}
              text="Publish"
              name={`Publish the data as ${name}`}
            />
          </li>
        ))}
      </ul>
    </Card>
  );
}
