/** First line of every part we write. */
export const declaration = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
export const spreadsheetNamespace = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
export const relationshipsOfDocument = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
export const packageRelationships = "http://schemas.openxmlformats.org/package/2006/relationships";
export const drawingNamespace = "http://schemas.openxmlformats.org/drawingml/2006/main";
export const spreadsheetDrawing = "http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing";
export const chartNamespace = "http://schemas.openxmlformats.org/drawingml/2006/chart";
