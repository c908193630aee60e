/** What the page says of a fabric's picture, its print and the drawer. */
export const clothWords = {
  // A picture of the fabric
  photo: "A photo of it",
  takePhoto: "Take or choose a photo",
  otherPhoto: "Another photo",
  dropPhoto: "Take the photo away",
  photoTaken: (name: string, from: string, to: string) =>
    `${name} is seen as in the photo: ${from} made ${to}. Its colour is taken from it.`,
  photoCoarse: "It is a small picture, so its print will look coarse.",
  photoGone: (name: string) => `${name} has no photo any more; undo brings it back.`,
  photoRefused: {
    drawing:
      "This is a drawing made of code, not a photo. Save it as JPEG or PNG first: nothing of it was run.",
    heic: "This browser cannot open HEIC photos. Save the photo as JPEG, or set the camera to “most compatible”.",
    large: "This file is larger than 80 MB. A photo as the camera makes it is enough.",
    none: "This file is no photo a browser can open. JPEG, PNG and WebP can be opened.",
    tiny: "This picture is too small to show a fabric: at least 8 points each way.",
  },
  photoNotKept: "The photo is here while the page is open: this browser has no room to keep it.",
  kiloBytes: (count: number) => `${count} kB`,
  megaBytes: (count: string) => `${count} MB`,
  photoWidth: "What the photo shows is",
  photoWidthAfter: "wide",
  photoWidthGuess: (size: string) => `Taken as ${size} until you say: lay a ruler across it once.`,
  photoWide: (name: string, size: string) => `${name}: the photo shows ${size} across.`,
  turnPhoto: "Turn the photo",
  photoTurned: (name: string) => `${name}: the photo turned. Its selvage stands upright.`,
  photoHelp:
    "Drag a box over what repeats, or tap two corners. Arrows move the box; shift and arrows make it larger or smaller.",
  photoBox: (name: string, size: string) => `Part of the photo of ${name} that is laid side by side: ${size}`,
  boxSaid: (size: string) => `Laid side by side: ${size}.`,
  boxCorner: "Now tap the opposite corner.",
  wholePhoto: "All of the photo",
  boxAcross: "box across",
  boxDown: "box down",
  repeatIs: "This is its repeat",
  repeatField: "repeat",
  repeatExample: "6 x 8 in",
  repeatWrong: (wish: string) => `“${wish}” is no repeat. For example: 6 x 8 in, across and along.`,
  repeatSaid: (name: string, size: string) => `${name} repeats every ${size}.`,
  repeatNone: (name: string) => `${name}: no repeat is said.`,
  arrow: (way: string) => `Its up points ${way}. Turn the arrow`,
  arrowTurn: "Turn the arrow",
  arrowWays: { 0: "up", 90: "to the right", 180: "down", 270: "to the left" } as Readonly<
    Record<number, string>
  >,
  arrowTurned: (name: string, way: string, along: boolean) =>
    `${name}: up points ${way}, ${along ? "along the selvage" : "across the fabric"}.`,
  axes: { along: "along the selvage", across: "across the fabric" } as Readonly<Record<string, string>>,
  axisLabel: "Which way its up runs",
  axisSaid: (name: string, axis: string) => `${name}: its up runs ${axis}.`,

  // The drawer
  drawer: "The drawer",
  drawerEmpty: "Fabric you have already, as a list: a table with fabric, width, length, how many.",
  openDrawer: "Open the drawer’s file",
  saveDrawer: "Save the drawer’s file",
  drawerOpened: (name: string, count: number) =>
    `${name}: ${count === 1 ? "one piece of fabric" : `${count} pieces of fabric`} in the drawer.`,
  drawerRefused: (name: string, why: string) => `${name} is no list of fabric. ${why}`,
  drawerWarned: (count: number) =>
    count === 1
      ? "One line could not be read; it stays as it is."
      : `${count} lines could not be read; they stay as they are.`,
  drawerHeap: (fabric: string, count: number) =>
    `${fabric}, ${count === 1 ? "one piece" : `${count} pieces`}`,
  drawerPiece: (size: string, count: number) => (count === 1 ? size : `${count} of ${size}`),
  drawerOther: "Of other fabrics",
  drawerAdd: "Put it in",
  drawerFabric: "fabric",
  drawerSize: "size",
  drawerCount: "how many",
  drawerSizeExample: "21 x 18 in",
  drawerAdded: (fabric: string, size: string) => `In the drawer: ${fabric}, ${size}.`,
  drawerTake: (fabric: string, size: string) => `take one out: ${fabric}, ${size}`,
  drawerTakeOne: "take one out",
  drawerTook: (fabric: string, size: string) => `Taken out: ${fabric}, ${size}.`,
  drawerBack: "Put it back",
  drawerAsk: "What does the drawer cover?",
  drawerAsking: "Planned with the drawer …",
  drawerCovers: {
    all: (fabric: string) => `${fabric}: all of it; nothing to buy.`,
    part: (fabric: string, buy: string, before: string) => `${fabric}: buy ${buy} in place of ${before}.`,
    none: (fabric: string, buy: string) => `${fabric}: nothing saved; ${buy} as before.`,
    absent: (fabric: string) => `${fabric}: none in the drawer.`,
  },
  drawerUsed: (list: string) => `Cut from ${list}.`,
  drawerCannot: "With the drawer it cannot be planned just now.",
  drawerHow: "The same by command, with the list saved:",
} as const;
