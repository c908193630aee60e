import type { FabricKey } from "../../../diagnostics/file-keys.ts";
import type { KeyWords } from "../../file-keys.ts";

/** The head of a file, fabrics and the pieces cut from them. */
export const fabricsKeys: KeyWords<FabricKey> = {
  "file.name": { says: "what the quilt is called", example: "Harbour lights" },
  "file.language": {
    says: "the language of what is printed; without it that of your system",
    example: "de",
  },
  "file.ruler": {
    says: "distance between two marks of your ruler",
    example: { inches: "1/8 in", metric: "0.25 cm" },
  },
  "file.ruler-length": {
    says: "longest cut one placing of your ruler can make",
    example: { inches: "24 in", metric: "60 cm" },
  },
  "file.mat-length": {
    says: "longer side of your cutting mat",
    example: { inches: "36 in", metric: "90 cm" },
  },
  "file.style": { says: "strip and subcut, or a further cut into stacks", example: "strips-2" },
  "file.prefer": {
    says: "for the same purchase the least length, or the least work at the mat",
    example: "simple",
  },
  "file.keep-from": {
    says: "leftovers this big both ways are worth keeping",
    example: { inches: "2 in", metric: "5 cm" },
  },
  "file.join-from": {
    says: "what is joined end to end, a border or a binding, has no piece shorter than this",
    example: { inches: "16 in", metric: "40 cm" },
  },
  "file.units": { says: "the measure of bare numbers", example: "in" },
  "file.folded": {
    says: "whether fabric is folded once, selvage to selvage, for cutting strips",
    example: true,
  },
  file: { title: "Crossgrain file", says: "A cut list, or a quilt design, as Crossgrain reads it" },
  "cut-list": { title: "Crossgrain cut list", says: "fabrics and the pieces to cut from each" },
  "cut-list.fabrics": { says: "the fabrics, each with its pieces", example: "- name: Night sea" },
  "all-fabrics": { says: "what holds for every fabric unless it says otherwise" },
  "fabric.shrinkage.across": { says: "shrinkage of its width", example: "3%" },
  "fabric.shrinkage.along": { says: "shrinkage of its length", example: "3%" },
  "fabric.colour": { says: "the colour it is drawn in", example: '"#1d3557"' },
  "fabric.width": {
    says: "width of fabric, selvage to selvage",
    example: { inches: "43 in", metric: "110 cm" },
  },
  "fabric.selvage": { says: "width of one selvage", example: { inches: "1/2 in", metric: "1.5 cm" } },
  "fabric.straighten": {
    says: "length lost in straightening the cut end",
    example: { inches: "1 in", metric: "2.5 cm" },
  },
  "fabric.square-up": {
    says: "what squaring takes off cloth of a fixed size, off one edge each way",
    example: { inches: "1/2 in", metric: "1 cm" },
  },
  "fabric.spare": {
    says: "extra length to buy beyond the plan",
    example: { inches: "2 in", metric: "5 cm" },
  },
  fabric: { says: "one fabric and what is cut from it" },
  "fabric.name": { says: "what the fabric is called", example: "Night sea" },
  "fabric.note": { says: "anything to print with the fabric", example: "for the border" },
  "fabric.repeat": {
    says: "how often its print comes again, across and along the fabric",
    example: { inches: "6 x 8 in", metric: "15 x 20 cm" },
  },
  "fabric.bolt": {
    says: "how long a bolt is at the shop: no strip crosses its end; endless: as long as is wanted",
    example: { inches: "12 yd", metric: "10 m" },
  },
  "fabric.shrinkage": { says: "how much it shrinks when washed before cutting", example: "3%" },
  "fabric.print": {
    says: "which way its print reads, and whether its up runs along the selvage or across",
    example: "one-way along",
  },
  "fabric.pieces": { says: "the sizes to cut, one to a line", example: "- sky 2 1/2 x 4 1/2, 24" },
  "fabric.sold": {
    says: "how the shop sells it: the step it is cut in, and the least it cuts",
    example: "by 1/8 yd",
  },
  "fabric.price": { says: "the price per yard or metre", example: "$12.50 per yd" },
  "fabric.have": {
    says: "cloth of it that is there already, used before any is bought: fat quarters, precuts, strips cut before, scraps",
    example: "- fat quarter, 3",
  },
  "fabric.have.line": {
    says: "cloth of it that is there already, used before any is bought: fat quarters, precuts, strips cut before, scraps",
    example: "fat quarter, 3",
  },
  "fabric.ready-cut": {
    says: "sizes the shop sells ready cut, each with its price: weighed against yardage",
    example: "- fat quarter, $3.50",
  },
  "fabric.ready-cut.line": {
    says: "sizes the shop sells ready cut, each with its price: weighed against yardage",
    example: "fat quarter, $3.50",
  },
  "fabric.yardage": { says: "whether it can be bought from the bolt", example: "no" },
  "sold.by": { says: "the step amounts are cut in", example: "1/8 yd" },
  "sold.least": { says: "the least the shop will cut", example: "1/4 yd" },
  "sold.in": { says: "the measure amounts are spoken in", example: "yd" },
  "piece.label": { says: "a short name for the bag label", example: "sky" },
  "piece.size": {
    says: "size as cut, across the fabric first; `WOF` for its whole width",
    example: { inches: "2 1/2 x 4 1/2", metric: "6.5 x 11.5" },
  },
  "piece.count": { says: "how many to cut", example: 24 },
  "piece.turn": { says: "whether it may lie turned a quarter", example: "fixed" },
  "piece.cut": { says: "from strips, or along the selvage", example: "lengthwise" },
  "piece.join": { says: "whether it may be joined from strips", example: "diagonal" },
  "piece.note": { says: "anything to print with the piece", example: "outer border" },
  "piece.line": {
    says: "a piece on one line: label, size, a comma, count",
    example: "sky 2 1/2 x 4 1/2, 24",
  },
  "count.on-line": { says: "how many to cut, after a comma" },
  "shape.label": { says: "a short name for the bag label", example: "sails" },
  "shape.count": { says: "how many to cut", example: 24 },
  "shape.turn": { says: "whether it may lie turned", example: "fixed" },
  "shape.note": { says: "anything to print with the piece", example: "rim" },
  "shape.shape": { says: "a shape cut aslant from strips", example: "triangle" },
  "shape.side": {
    says: "finished length of the side along the strip",
    example: { inches: "4", metric: "10" },
  },
  "shape.height": { says: "finished height, square to that side", example: { inches: "3", metric: "8" } },
  "shape.seam": {
    says: "seam allowance; 0 where sizes are as cut",
    example: { inches: "1/4", metric: "0.75" },
  },
  "shape.tips": { says: "whether a triangle's point is cut off", example: "blunt" },
  "shape.lean": { says: "which way it leans", example: "left" },
  "shape.angle": { says: "degrees between the side and a slanting edge", example: 60 },
};
