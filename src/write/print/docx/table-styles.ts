/**
 * Styles in WordprocessingML, for which the library has no words of its own. Of tables: lines between rows, a strong line under
 * the head; and boxes to write in. And the plain style of letters that the library's own are based on.
 */
export const tableStyles = `<w:styles xmlns:w="http://schemas.openxmlformats.org/wordprocessingml/2006/main">
<w:style w:type="character" w:default="1" w:styleId="DefaultParagraphFont">
  <w:name w:val="Default Paragraph Font"/><w:uiPriority w:val="1"/><w:semiHidden/><w:unhideWhenUsed/>
</w:style>
<w:style w:type="table" w:customStyle="1" w:styleId="RuledTable">
  <w:name w:val="Ruled Table"/><w:basedOn w:val="TableNormal"/><w:uiPriority w:val="40"/><w:qFormat/>
  <w:tblPr>
    <w:tblBorders>
      <w:bottom w:val="single" w:sz="6" w:space="0" w:color="777777"/>
      <w:insideH w:val="single" w:sz="2" w:space="0" w:color="BBBBBB"/>
    </w:tblBorders>
    <w:tblCellMar>
      <w:top w:w="28" w:type="dxa"/><w:left w:w="0" w:type="dxa"/><w:bottom w:w="34" w:type="dxa"/><w:right w:w="142" w:type="dxa"/>
    </w:tblCellMar>
  </w:tblPr>
  <w:tblStylePr w:type="firstRow">
    <w:tcPr><w:tcBorders><w:bottom w:val="single" w:sz="8" w:space="0" w:color="111111"/></w:tcBorders></w:tcPr>
  </w:tblStylePr>
</w:style>
<w:style w:type="table" w:customStyle="1" w:styleId="FormTable">
  <w:name w:val="Form Table"/><w:basedOn w:val="TableNormal"/><w:uiPriority w:val="40"/><w:qFormat/>
  <w:tblPr>
    <w:tblBorders>${['top', 'left', 'bottom', 'right', 'insideH', 'insideV']
      .map((side) => `<w:${side} w:val="single" w:sz="4" w:space="0" w:color="333333"/>`)
      .join('')}</w:tblBorders>
    <w:tblCellMar>
      <w:top w:w="14" w:type="dxa"/><w:left w:w="68" w:type="dxa"/><w:bottom w:w="14" w:type="dxa"/><w:right w:w="68" w:type="dxa"/>
    </w:tblCellMar>
  </w:tblPr>
</w:style>
</w:styles>`;

/** Ids of the styles above. */
export const tableStyle = { ruled: 'RuledTable', form: 'FormTable' } as const;
