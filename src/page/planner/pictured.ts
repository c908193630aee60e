import { fabricKey, type Plan } from "../../planning.ts";

/** A fabric that has a photo: what the ids of its tiles on the page begin with, and where its print's up points there. */
export interface SeenPhoto {
  fabric: string;
  id: string;
  up: number;
}

/** The same plan with its fabrics drawn in their photos. What is handed out as files is made of the plan without them. */
export function pictured(plan: Plan, photos: readonly SeenPhoto[]): Plan {
  if (photos.length === 0) return plan;
  const byName = new Map(photos.map(({ fabric, id, up }) => [fabricKey(fabric), { id, up }]));
  const fabrics = plan.fabrics.map((fabric) => {
    const photo = byName.get(fabricKey(fabric.name));
    return photo === undefined ? fabric : { ...fabric, photo };
  });
  return { ...plan, fabrics };
}
