import { useId } from 'react';
import { Choice } from './Field.tsx';
import styles from './one-of.module.css';

/** One of few, each with its words; chosen at once. */
export function OneOf<Value extends string>({
  title,
  chosen,
  options,
  onChoose,
}: {
  title: string;
  chosen: Value;
  options: readonly { value: Value; text: string }[];
  onChoose: (value: Value) => void;
}) {
  const group = useId();
  return (
    <fieldset>
      <legend className={styles.legend}>{title}</legend>
      <div className={styles.choices}>
        {options.map(({ value, text }) => (
          <Choice
            key={value}
            kind="radio"
            name={group}
            checked={chosen === value}
            onChange={() => onChoose(value)}
          >
            {text}
          </Choice>
        ))}
      </div>
    </fieldset>
  );
}
