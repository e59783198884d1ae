import {
  type InputHTMLAttributes,
  type ReactNode,
  type Ref,
  type SelectHTMLAttributes,
  type TextareaHTMLAttributes,
  useId,
} from 'react';
import styles from './field.module.css';

interface Labelled {
  label: string;
  help?: ReactNode;
}

function Frame({ id, label, help, children }: Labelled & { id: string; children: ReactNode }) {
  return (
    <div className={styles.field}>
      <label className={styles.label} htmlFor={id}>
        {label}
      </label>
      {children}
      {help !== undefined && (
        <p className={styles.help} id={`${id}-help`}>
          {help}
        </p>
      )}
    </div>
  );
}

const describedBy = (id: string, help: ReactNode) =>
  help === undefined ? {} : { 'aria-describedby': `${id}-help` };

export function TextField({
  label,
  help,
  ...rest
}: Labelled & InputHTMLAttributes<HTMLInputElement> & { ref?: Ref<HTMLInputElement> }) {
  const id = useId();
  return (
    <Frame id={id} label={label} help={help}>
      <input id={id} autoComplete="off" {...describedBy(id, help)} {...rest} className={styles.control} />
    </Frame>
  );
}

export function TextArea({
  label,
  help,
  ...rest
}: Labelled & TextareaHTMLAttributes<HTMLTextAreaElement> & { ref?: Ref<HTMLTextAreaElement> }) {
  const id = useId();
  return (
    <Frame id={id} label={label} help={help}>
      <textarea id={id} {...describedBy(id, help)} {...rest} className={styles.control} />
    </Frame>
  );
}

export function SelectField({
  label,
  help,
  options,
  ...rest
}: Labelled & SelectHTMLAttributes<HTMLSelectElement> & { options: { value: string; text: string }[] }) {
  const id = useId();
  return (
    <Frame id={id} label={label} help={help}>
      <select id={id} {...describedBy(id, help)} {...rest} className={styles.control}>
        {options.map(({ value, text }) => (
          <option key={value} value={value}>
            {text}
          </option>
        ))}
      </select>
    </Frame>
  );
}

/** Fields side by side as far as there is room; `wide`: for what holds long names. */
export function Fields({ wide = false, children }: { wide?: boolean; children: ReactNode }) {
  return <div className={wide ? styles.wideGrid : styles.grid}>{children}</div>;
}

/** A box to tick or one of several to choose, with its words. */
export function Choice({
  kind,
  children,
  help,
  ...rest
}: {
  kind: 'checkbox' | 'radio';
  children: ReactNode;
  help?: ReactNode;
} & InputHTMLAttributes<HTMLInputElement>) {
  return (
    <label className={styles.choice}>
      <input type={kind} {...rest} />
      <span>
        {children}
        {help !== undefined && <small>{help}</small>}
      </span>
    </label>
  );
}
