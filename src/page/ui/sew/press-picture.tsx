import { useEffect, useState } from "preact/hooks";
import type { PressPicture, SewnSeam } from "../../planner/pressing.ts";
import { words } from "../../words/index.ts";
import { photoNamed } from "../pile.tsx";
import { Stepper } from "../steps.tsx";
import { sewingShown } from "./sew-stops.ts";

const TURN = { right: 0, down: 90, left: 180, up: 270 } as const;

/** An arrow at a seam, the way its allowances go. */
function Arrow({ seam, size }: { seam: SewnSeam; size: number }) {
  const [x, y] = [(seam.x1 + seam.x2) / 2, (seam.y1 + seam.y2) / 2];
  return (
    <g transform={`translate(${x} ${y}) rotate(${TURN[seam.press]}) scale(${size})`}>
      <path class="arrowhalo" d="M-.1 0H1M.55 -.45L1 0L.55 .45" />
      <path class="arrow" d="M-.1 0H1M.55 -.45L1 0L.55 .45" />
    </g>
  );
}

/** The seams over pale fabric, each with its arrow; the one in hand is drawn stronger. */
function PressDrawing({
  picture,
  now,
  hold,
}: {
  picture: PressPicture;
  now: SewnSeam | undefined;
  hold(seam: number): void;
}) {
  const fabrics = sewingShown.value?.fabrics ?? [];
  const { x, y, across, down, seams } = picture;
  const line = Math.max(across, down) / 260;
  const shortest = Math.min(
    ...seams.map((seam) => Math.max(Math.abs(seam.x2 - seam.x1), Math.abs(seam.y2 - seam.y1))),
  );
  const size = Math.min(Math.max(across, down) / 14, shortest / 2.2);
  return (
    <svg
      class="pic"
      viewBox={`${x - line * 3} ${y - line * 3} ${across + line * 6} ${down + line * 6}`}
      role="img"
      aria-label={words.pressName(picture.name, picture.count)}
    >
      <rect class="ground" x={x} y={y} width={across} height={down} />
      {picture.groups.map(({ fabric, d }) => (
        <path
          key={fabric}
          class="pale"
          d={d}
          fill={photoNamed(fabric) ?? fabrics.find(({ name }) => name === fabric)?.colour ?? "#fff"}
          stroke-width={line / 2}
        />
      ))}
      {seams.map((seam, i) => {
        const ends = { x1: seam.x1, y1: seam.y1, x2: seam.x2, y2: seam.y2 };
        return (
          <g key={i} class={seam === now ? "pseam held" : "pseam"} onClick={() => hold(i)}>
            <line class="hit" {...ends} stroke-width={line * 14} />
            <line class="sewn" {...ends} stroke-width={seam === now ? line * 3 : line * 1.4} />
            <Arrow seam={seam} size={size} />
          </g>
        );
      })}
    </svg>
  );
}

/** What is pressed in one go, on pale fabric: a seam tapped tells what lies under it. */
export function Pressing({ picture }: { picture: PressPicture }) {
  const [held, setHeld] = useState(0);
  useEffect(() => setHeld(0), [picture.name]);
  const { seams } = picture;
  const now = seams[Math.min(held, seams.length - 1)];
  const move = (event: KeyboardEvent) => {
    const by = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key];
    if (by === undefined) return;
    event.preventDefault();
    event.stopPropagation();
    setHeld((at) => (at + by + seams.length) % seams.length);
  };
  return (
    <figure class="pressing">
      <PressDrawing picture={picture} now={now} hold={setHeld} />
      {now === undefined ? null : (
        <figcaption onKeyDown={move}>
          {seams.length < 2 ? null : (
            <Stepper
              what={words.pressTitle}
              value={words.seamOf(Math.min(held, seams.length - 1) + 1, seams.length)}
              less={() => setHeld((held + seams.length - 1) % seams.length)}
              more={() => setHeld((held + 1) % seams.length)}
            />
          )}
          <p aria-live="polite">{words.seamSays(words.ways[now.press], now.under, now.beside)}</p>
        </figcaption>
      )}
    </figure>
  );
}
