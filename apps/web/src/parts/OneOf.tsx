import { useEffect, useId, useState } from 'react';
import { Choice } from './Field.tsx';
import styles from './one-of.module.css';

/**
 * One of few, each with its words; chosen at once: what was picked shows in the very event, not when what it changes comes
 * back a moment later, which would show the old choice in between.
 */
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
  const [picked, setPicked] = useState<Value | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: what stands now is the answer to what was picked, whichever it is.
  useEffect(() => setPicked(null), [chosen]);
  const pick = (value: Value) => {
    setPicked(value);
    onChoose(value);
  };
  return (
    <fieldset>
      <legend className={styles.legend}>{title}</legend>
      <div className={styles.choices}>
        {options.map(({ value, text }) => (
          <Choice
            key={value}
            kind="radio"
            name={group}
            checked={(picked ?? chosen) === value}
            onChange={() => pick(value)}
          >
            {text}
          </Choice>
        ))}
      </div>
    </fieldset>
  );
}
