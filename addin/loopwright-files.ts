// Writing workbooks, apart from everything else: it brings the spreadsheet library, and is loaded when a file is saved.
export { workbookBytes } from "../lib/workbook/write/workbook-bytes.js";
