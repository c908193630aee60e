export function startPage(): void {
  document.getElementById("page")!.textContent = "hello";
}
