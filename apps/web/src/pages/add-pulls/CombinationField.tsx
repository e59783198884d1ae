import { useQuery } from '@tanstack/react-query';
import { combinationsQuestion } from '../../api/questions.ts';
import { SelectField } from '../../parts/Field.tsx';
import { Marked } from './Marked.tsx';

/** Which combination was on the brake. */
export function CombinationField({
  combinationId,
  onCombination,
}: {
  combinationId: string;
  onCombination: (id: string) => void;
}) {
  const combinations = useQuery(combinationsQuestion());
  const options = [
    { value: '', text: 'Not said yet' },
    ...(combinations.data ?? []).map((one) => ({ value: one.id, text: `${one.name} · ${one.engineName}` })),
  ];
  const textOf = (id: string) => options.find(({ value }) => value === id)?.text ?? id;
  return (
    <Marked name="combinationId" value={combinationId} shown={textOf}>
      {(help) => (
        <SelectField
          label="Combination"
          value={combinationId}
          onChange={(event) => onCombination(event.target.value)}
          options={options}
          {...help}
        />
      )}
    </Marked>
  );
}
