import { SelectField } from './Field.tsx';

const ANSWERS = [
  { value: 'parts', text: 'Told by the parts that changed', said: null },
  { value: 'yes', text: 'Yes: a new set-up', said: true },
  { value: 'no', text: 'No: it went on, on the brake', said: false },
];

/** Whether the engine was taken apart for a combination, coming from the baseline. It decides how wide the band is. */
export function TakenApartField({
  value,
  onSay,
}: {
  value: boolean | null;
  onSay: (value: boolean | null) => void;
}) {
  return (
    <SelectField
      label="Engine taken apart for it"
      value={ANSWERS.find(({ said }) => said === value)!.value}
      options={ANSWERS}
      onChange={(event) => onSay(ANSWERS.find(({ value: one }) => one === event.target.value)!.said)}
    />
  );
}
