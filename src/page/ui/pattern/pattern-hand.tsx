import { useRef, useState } from "preact/hooks";
import {
  type PatternLine,
  patternOfText,
  setPatternLine,
  setPatternParts,
  setPatternWords,
} from "../../../edits/pattern-edits.ts";
import { PATTERN_PARTS, type PatternPart } from "../../../planning.ts";
import { words } from "../../words/index.ts";
import { edit } from "../actions.ts";
import { Field, FieldOfLines } from "../field.tsx";
import * as state from "../state.ts";
import { typedInto } from "../typed-into.ts";
import { movedEarlier, placesFor, takenOf } from "./part-places.ts";

const nameOf = (part: PatternPart): string => words.pattern.partNames[part] ?? part;

/** The parts of the pattern, each at its place whether it is taken or left out. */
function Parts() {
  const { parts } = patternOfText(state.text.value);
  const last = useRef<readonly PatternPart[]>(PATTERN_PARTS);
  const places = placesFor(parts, PATTERN_PARTS, last.current);
  last.current = places;
  const take = (next: readonly PatternPart[], say: string) =>
    edit((text) => setPatternParts(text, next), say);
  return (
    <ul class="parts">
      {places.map((part) => {
        const within = parts.includes(part);
        const name = nameOf(part);
        return (
          <li key={part}>
            <button
              type="button"
              class="act donebox"
              aria-pressed={within}
              onClick={() => {
                const others = parts.filter((one) => one !== part);
                if (!within) take(takenOf(places, [...parts, part]), words.pattern.partIn(name));
                else if (others.length === 0) state.said.value = words.pattern.onePart;
                else take(others, words.pattern.partOut(name));
              }}
            >
              <span class="box" aria-hidden="true">
                {within ? "✓" : ""}
              </span>
              {name}
            </button>
            {parts.indexOf(part) < 1 ? null : (
              <button
                type="button"
                class="act"
                aria-label={words.pattern.moveEarlier(name)}
                onClick={() => {
                  last.current = movedEarlier(places, parts, part);
                  take(takenOf(last.current, parts), words.pattern.moveEarlier(name));
                }}
              >
                ↑
              </button>
            )}
          </li>
        );
      })}
    </ul>
  );
}

/** The author's own words at one place of the pattern, as they are typed. */
function OwnWords() {
  const [where, setWhere] = useState<"before" | "after">("before");
  const [part, setPart] = useState<PatternPart>("requirements");
  const pattern = patternOfText(state.text.value);
  const now = pattern.words(where, part);
  const said = (one: PatternPart) =>
    pattern.words("before", one) !== "" || pattern.words("after", one) !== "";
  return (
    <div class="ownwords">
      <div class="row">
        <select
          aria-label={words.pattern.ownWords}
          value={where}
          onChange={({ currentTarget }) => setWhere(currentTarget.value === "after" ? "after" : "before")}
        >
          <option value="before">{words.pattern.before}</option>
          <option value="after">{words.pattern.after}</option>
        </select>
        <select
          aria-label={words.pattern.patternParts}
          value={part}
          onChange={({ currentTarget }) =>
            setPart(PATTERN_PARTS.find((one) => one === currentTarget.value) ?? "requirements")
          }
        >
          {PATTERN_PARTS.map((one) => (
            <option key={one} value={one}>
              {nameOf(one)}
              {said(one) ? " ✎" : ""}
            </option>
          ))}
        </select>
      </div>
      <FieldOfLines
        key={`${where} ${part}`}
        aria-label={words.pattern.ownWordsAt(words.pattern[where], nameOf(part))}
        rows={5}
        value={now}
        onChange={({ currentTarget }) =>
          typedInto(
            currentTarget,
            now,
            (text, wish) => setPatternWords(text, where, part, wish),
            words.pattern.ownWordsAt(words.pattern[where], nameOf(part)),
            () => words.pattern.wrongWords,
          )
        }
      />
      <p class="quiet">{words.pattern.ownWordsHelp}</p>
    </div>
  );
}

/** What the pattern is made of: its parts, the author's lines and words, further sizes. All of it is in the quilt's text. */
export function PatternHand() {
  const pattern = patternOfText(state.text.value);
  return (
    <div class="patternhand">
      <details class="notes">
        <summary>{words.pattern.patternParts}</summary>
        <Parts />
      </details>
      <details class="notes">
        <summary>{words.pattern.authorLines}</summary>
        <div class="row fields">
          {(Object.keys(words.pattern.lines) as PatternLine[]).map((line) => (
            <label key={line}>
              <span>{words.pattern.lines[line]}</span>
              <Field
                value={pattern.line(line)}
                placeholder={words.pattern.lineExamples[line]}
                onChange={({ currentTarget }) =>
                  typedInto(
                    currentTarget,
                    pattern.line(line),
                    (text, wish) => setPatternLine(text, line, wish),
                    words.pattern.lines[line],
                    words.pattern.wrongLine,
                  )
                }
              />
            </label>
          ))}
        </div>
      </details>
      <details class="notes">
        <summary>{words.pattern.ownWords}</summary>
        <OwnWords />
      </details>
    </div>
  );
}
