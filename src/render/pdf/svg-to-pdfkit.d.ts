declare module "svg-to-pdfkit" {
  /** Draws an SVG document onto the current page. */
  export default function svgToPdf(
    document: PDFKit.PDFDocument,
    svg: string,
    x: number,
    y: number,
    options: {
      width: number;
      height: number;
      assumePt: boolean;
      preserveAspectRatio: string;
      fontCallback: (family: string, bold: boolean, italic: boolean) => string;
      warningCallback?: (text: string) => void;
    },
  ): void;
}
