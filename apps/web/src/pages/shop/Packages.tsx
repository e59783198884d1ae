import { useQuery } from '@tanstack/react-query';
import type { SheetWords } from '../../api/edge.ts';
import { packagesQuestion, sheetWordsQuestion } from '../../api/questions.ts';
import { Card } from '../../parts/Card.tsx';
import { Trouble } from '../../parts/Trouble.tsx';
import styles from './shop.module.css';

/** Parts that belong to one change by declaration. New ones are declared where they are fitted: on a combination. */
export function Packages() {
  const packages = useQuery(packagesQuestion());
  const words = useQuery(sheetWordsQuestion());
  return (
    <Card title="Packages">
      <Trouble of={packages.error} />
      {packages.data?.length === 0 && (
        <p className={styles.soft}>
          None yet. A package makes one change of parts that come and go together; declare it on a
          combination.
        </p>
      )}
      <ul>
        {packages.data?.map(({ id, name, covers }) => (
          <li key={id} className={styles.row}>
            <div>
              <p className={styles.instrumentName}>{name}</p>
              <p className={styles.soft}>{covers.map((part) => partWords(part, words.data)).join(' · ')}</p>
            </div>
          </li>
        ))}
      </ul>
    </Card>
  );
}

/** A part by its name on the sheet: `fuelSystem.injectorFlow` is `Fuel system: Injector flow`. */
function partWords(part: string, words: SheetWords | undefined): string {
  const [sectionId, fieldId] = part.split('.');
  const section = words?.sections.find(({ id }) => id === sectionId);
  if (section === undefined) return part;
  const field = section.fields.find(({ field: id }) => id === fieldId);
  return field === undefined ? section.title : `${section.title}: ${field.label}`;
}
