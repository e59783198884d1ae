import buttonStyles from '../../parts/button.module.css';
import { useViewChoices } from '../../view/view-choices.ts';

/** The pull sheet to print, a page of its own; on the paper that goes with the units, the other beside it. */
export function PrintLinks({ letter, a4 }: { letter: string; a4: string }) {
  const { units } = useViewChoices();
  const papers = [
    { name: 'letter', address: letter },
    { name: 'A4', address: a4 },
  ];
  if (units === 'si') papers.reverse();
  return papers.map(({ name, address }) => (
    <a key={name} className={buttonStyles.button} href={address} target="_blank" rel="noreferrer">
      Pull sheet, {name}
    </a>
  ));
}
