/// <reference lib="dom" />

/**
 * Lets the page's table be sorted by the buttons in its head: upward first, then downward. Runs in the page, so it names
 * nothing outside itself.
 */
export function sortTable(table: HTMLTableElement): void {
  const heads = Array.from(table.tHead!.rows[0].cells);
  heads.forEach((head, column) => {
    head.querySelector('button')?.addEventListener('click', () => {
      const way = head.getAttribute('aria-sort') === 'ascending' ? -1 : 1;
      for (const other of heads) other.removeAttribute('aria-sort');
      head.setAttribute('aria-sort', way === 1 ? 'ascending' : 'descending');
      const keyOf = (row: HTMLTableRowElement) =>
        row.cells[column].dataset.value ?? row.cells[column].textContent ?? '';
      const rows = Array.from(table.tBodies[0].rows);
      rows.sort((a, b) => {
        const [one, other] = [keyOf(a), keyOf(b)];
        // Rows with nothing to sort by stay at the end either way.
        if (one === '' || other === '') return Number(one === '') - Number(other === '');
        return way * one.localeCompare(other, undefined, { numeric: true });
      });
      table.tBodies[0].append(...rows);
    });
  });
}
