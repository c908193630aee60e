/** What is said of the blade, once: every paper and drawing takes its cautions from here. Common practice, no source. */
export const bladeCautions = {
  shut: "Die Klinge nach jedem Schnitt schließen, auch wenn der Rollschneider nur kurz abgelegt wird.",
  away: "Im Stehen und vom Körper weg schneiden, nie auf die Hand zu, die das Lineal hält.",
  long: "Bei einem langen Schnitt anhalten, die Klinge im Stoff lassen, die Hand am Lineal nachsetzen und weiterschneiden.",
  fingers:
    "Auf der Schneidematte am Lineal entlang schneiden, Fingerspitzen und Knöchel weit weg von seiner Kante.",
  blunt:
    "Eine stumpfe Klinge braucht Kraft und rutscht ab: wechseln und die alte einwickeln, bevor sie weggeworfen wird.",
  pins: "Nie eine Stecknadel unter die Klinge: alle Nadeln aus dem ziehen, was geschnitten wird.",
  tired: "Nicht müde schneiden. Den geschlossenen Rollschneider für Kinder unerreichbar aufbewahren.",
};

/** With needle and iron. Common practice, no source. */
export const sewingCautions = {
  needle:
    "Finger weg von der Nadel; den Fuß vom Pedal nehmen, bevor die Hand darunter greift. Nur bei ausgeschalteter Maschine einfädeln.",
  pins: "Stecknadeln herausziehen, bevor sie die Nadel erreichen: Trifft sie auf eine, bricht sie.",
  iron: "Ein Bügeleisen verbrennt: aufrecht abstellen und von der Hand weg bügeln. Eisen und Stecker nur mit trockenen Händen anfassen, und beim Weggehen ausschalten.",
};

export const estimates =
  "Die Mengen sind Schätzungen: vor dem Zuschneiden nachprüfen, ebenso die nutzbare Breite des eigenen Stoffes.";
