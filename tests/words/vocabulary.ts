import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import ts from "typescript";

/** Every TypeScript file of a folder. */
function filesIn(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    return entry.isDirectory() ? filesIn(path) : path.endsWith(".ts") ? [path] : [];
  });
}

/** Codes are compared, looked up and switched by; nobody reads them. */
function isCode(node: ts.Node): boolean {
  const { parent } = node;
  return (
    ts.isImportDeclaration(parent) ||
    ts.isExportDeclaration(parent) ||
    ts.isCaseClause(parent) ||
    ts.isElementAccessExpression(parent) ||
    ts.isLiteralTypeNode(parent) ||
    (ts.isPropertyAssignment(parent) && parent.name === node) ||
    (ts.isBinaryExpression(parent) &&
      [ts.SyntaxKind.EqualsEqualsEqualsToken, ts.SyntaxKind.ExclamationEqualsEqualsToken].includes(
        parent.operatorToken.kind,
      ))
  );
}

/** Texts of a source file that are said: strings and templates, codes left out. */
function textsOf(path: string): string[] {
  const source = ts.createSourceFile(path, readFileSync(path, "utf8"), ts.ScriptTarget.ES2023, true);
  const texts: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isStringLiteralLike(node) && !isCode(node)) texts.push(node.text);
    if (ts.isTemplateExpression(node)) {
      texts.push([node.head.text, ...node.templateSpans.map(({ literal }) => literal.text)].join("\u0001"));
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return texts;
}

/** What is written as it stands in a file or on the command line: between backticks, behind two dashes. */
export function withoutCode(text: string): string {
  return text.replace(/`[^`]*`/g, " ").replace(/--[\w-]+(?: [\w./-]+)?/g, " ");
}

/** The words of a text, in small letters: two letters at least, none that a figure or another sign cuts off. */
export function wordsOf(text: string): string[] {
  return (text.match(/[\p{L}]+(?:['’][\p{L}]+)?/gu) ?? [])
    .map((word) => word.toLowerCase())
    .filter((word) => word.length > 1);
}

/** Every word that the sources of a folder say. */
export function vocabularyOf(folder: string): Set<string> {
  return new Set(filesIn(folder).flatMap(textsOf).map(withoutCode).flatMap(wordsOf));
}
