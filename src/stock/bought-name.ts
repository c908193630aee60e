/** How the name of cloth that is bought ready cut begins in a plan, to tell it from the same cloth in hand. */
const BOUGHT = "bought ";

/** The name in a plan of cloth that is bought ready cut. */
export function boughtName(cloth: string): string {
  return `${BOUGHT}${cloth}`;
}

/** What a cloth of a plan is called by itself, bought or in hand. */
export function clothName(name: string): string {
  return name.startsWith(BOUGHT) ? name.slice(BOUGHT.length) : name;
}
