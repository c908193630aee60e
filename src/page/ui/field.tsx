import type { TargetedEvent } from "preact";
import { useLayoutEffect, useRef } from "preact/hooks";

/*
 * Fields whose letters count when they are left. While letters are typed the page goes on around them (amounts come in,
 * a search ends) and is drawn anew; what stands in the field is hers until it is left.
 */

type Typing = HTMLInputElement | HTMLTextAreaElement;

/** Fields with letters in them that nobody was told of yet. */
const open = new WeakSet<EventTarget>();

function useHeld<E extends Typing>(value: string, take: (event: TargetedEvent<E, Event>) => void) {
  const own = useRef<E>(null);
  useLayoutEffect(() => {
    const field = own.current;
    if (field !== null && !open.has(field) && field.value !== value) field.value = value;
  });
  return {
    ref: own,
    onInput: ({ currentTarget }: TargetedEvent<E, Event>) => void open.add(currentTarget),
    onBlur: ({ currentTarget }: TargetedEvent<E, Event>) => void open.delete(currentTarget),
    onChange(event: TargetedEvent<E, Event>) {
      open.delete(event.currentTarget);
      take(event);
    },
  };
}

interface Held<E extends Typing> {
  value: string;
  onChange(event: TargetedEvent<E, Event>): void;
  class?: string;
  "aria-label"?: string;
  placeholder?: string;
  disabled?: boolean;
  readOnly?: boolean;
}

/** A field of one line. */
export function Field({
  value,
  onChange,
  ...rest
}: Held<HTMLInputElement> & { size?: number; inputMode?: "numeric" | "text" }) {
  return <input {...rest} {...useHeld<HTMLInputElement>(value, onChange)} />;
}

/** A field of several lines. */
export function FieldOfLines({ value, onChange, ...rest }: Held<HTMLTextAreaElement> & { rows: number }) {
  return <textarea {...rest} {...useHeld<HTMLTextAreaElement>(value, onChange)} />;
}
