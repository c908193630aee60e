import type { ComponentChildren } from "preact";
import { useLayoutEffect, useRef } from "preact/hooks";

const buttonsOf = (box: HTMLElement | null): HTMLElement[] => [
  ...(box?.querySelectorAll<HTMLElement>("button") ?? []),
];

/** A few buttons of which one is in hand: one stop of Tab, arrows within. */
export function Group({
  label,
  name,
  children,
}: {
  label: string;
  name: string;
  children: ComponentChildren;
}) {
  const box = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    const all = buttonsOf(box.current);
    const stop =
      all.find((one) => one === document.activeElement) ??
      all.find((one) => one.matches('[aria-pressed="true"], [aria-current]')) ??
      all[0];
    for (const one of all) one.tabIndex = one === stop ? 0 : -1;
  });
  const move = (event: KeyboardEvent) => {
    const step = { ArrowLeft: -1, ArrowUp: -1, ArrowRight: 1, ArrowDown: 1 }[event.key];
    if (step === undefined) return;
    const all = buttonsOf(box.current);
    const at = all.indexOf(document.activeElement as HTMLElement);
    const next = all[(at + step + all.length) % all.length];
    for (const one of all) one.tabIndex = one === next ? 0 : -1;
    next?.focus();
    event.preventDefault();
  };
  return (
    <div ref={box} class={name} role="group" aria-label={label} onKeyDown={move}>
      {children}
    </div>
  );
}
