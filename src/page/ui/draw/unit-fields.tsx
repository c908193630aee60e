import { unitOn } from "../../../edits/block-edits.ts";
import type { BlockModel } from "../../../edits/model.ts";
import { fieldNow, fieldsOf, setColumns, setUnitField, type UnitField } from "../../../edits/unit-edits.ts";
import { outlinesOf } from "../../../edits/unit-patches.ts";
import { words } from "../../words/index.ts";
import { edit } from "../actions.ts";
import { Field } from "../field.tsx";
import * as state from "../state.ts";
import { lengthSaid, Stepper } from "../steps.tsx";
import { unitSaid } from "../unit-said.ts";

/** What the unit in hand can be told beside its fabrics: how many strips and how wide, how far its corners go. */
export function UnitFields({ block }: { block: BlockModel }) {
  const at = state.square.value;
  const unit = unitOn(block, at);
  const fields = unit === null ? [] : fieldsOf(unit.cell.kind);
  if (unit === null || fields.length === 0) return null;
  const { cell } = unit;
  const set = (field: UnitField, wish: string) => {
    const changed = edit(
      (text) => setUnitField(text, block.key, at, field, wish),
      `${words.unitFields[field]}: ${wish || words.usual}.`,
    );
    if (!changed) state.said.value = words.noLength(wish);
  };
  const parts = outlinesOf(cell, 1000 * 1000, 1000 * 1000, state.model.value.unit)?.parts.length ?? 0;
  const count = Number(cell.written.count) || parts;
  return (
    <div class="row fields" role="group" aria-label={words.unitFieldsLabel(unitSaid(cell.kind))}>
      {fields.map((field) =>
        field === "count" ? (
          <Stepper
            key={field}
            what={words.unitFields.count}
            value={`${count} ${words.unitFields.count}`}
            less={() => set(field, String(count - 1))}
            more={() => set(field, String(count + 1))}
          />
        ) : field === "leaning" ? (
          <button
            key={field}
            type="button"
            class="act"
            onClick={() => set(field, cell.written.leaning === "falling" ? "rising" : "falling")}
          >
            {words.leanOther}
          </button>
        ) : (
          <label key={field}>
            <span>{words.unitFields[field]}</span>
            <Field
              value={fieldNow(cell.written, field)}
              placeholder={words.usual}
              onChange={({ currentTarget }) => set(field, currentTarget.value)}
            />
          </label>
        ),
      )}
    </div>
  );
}

/** Columns and lines that are not all alike, each with its own size. */
export function ColumnFields({ block }: { block: BlockModel }) {
  if (block.form === "cell" || block.across === null) return null;
  const each = (all: readonly number[]): string => words.allAlike(lengthSaid((all[1] ?? 0) - (all[0] ?? 0)));
  const field = (which: "columns" | "lines", label: string, now: string, alike: string) => (
    <label key={which}>
      <span>{label}</span>
      <Field
        value={now}
        placeholder={now === "" ? alike : ""}
        onChange={({ currentTarget }) => {
          if (currentTarget.value.trim() === now) return;
          const wish = currentTarget.value.trim().split(/\s*,\s*/);
          const done = edit(
            (text) => setColumns(text, block.key, which, wish),
            `${label}: ${currentTarget.value}.`,
          );
          if (done) return;
          state.said.value = words.columnsBad(which === "columns" ? block.columns : block.rows);
          currentTarget.value = now;
        }}
      />
    </label>
  );
  return (
    <details class="notes">
      <summary>{words.ownSizes}</summary>
      <div class="row fields sizes">
        {field("columns", words.columnsField, block.ownColumns, each(block.xs))}
        {field("lines", words.linesField, block.ownLines, each(block.ys))}
      </div>
    </details>
  );
}
