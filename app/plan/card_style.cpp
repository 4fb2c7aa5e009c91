// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See card_style.h. Nothing here depends on printed backgrounds or colours: browsers leave them out, and cheap printers
// smear them. Sizes are of paper.
#include "app/plan/card_style.h"

namespace tinwright {

std::string_view card_style() {
  return R"css(@page{size:auto;margin:12mm}
*{box-sizing:border-box}
body{margin:0;font:12pt/1.25 "Liberation Sans",Arial,Helvetica,sans-serif;color:#000;background:#fff;color-scheme:light;overflow-wrap:anywhere}
main{max-width:192mm;margin:auto}
h1,h2,h3,p,ul,ol,dl,dd{margin:0}
h1{font-size:21pt;line-height:1.1}
h2{font-size:14pt;margin:3mm 0 1mm;border-bottom:.7mm solid;break-after:avoid}
h3{font-size:15pt;line-height:1.15;break-after:avoid}
small{font-size:10pt;font-weight:400}
svg{display:block;max-width:100%;height:auto}
svg text{font-family:inherit;stroke:none;fill:#000}
.pans{font-size:19pt;font-weight:700;line-height:1.15;margin-top:1.5mm;padding:1mm 3mm;border:.7mm solid}
.two{columns:2;column-gap:6mm}
.part,.pan>div,.small,.hand,.care,li,tr,dl>div{break-inside:avoid}
.long{break-inside:auto}
.part{padding:.5mm 0 1.5mm}
.factor{font-size:20pt;float:right;margin-left:3mm}
table{width:100%;border-collapse:collapse;table-layout:fixed}
thead{font-size:8.5pt;text-align:left}
tr{border-bottom:.2mm solid}
th,td{padding:.6mm 0;text-align:left;font-weight:400;vertical-align:middle}
thead th:first-child{width:43%}
td{font-size:17pt;font-weight:700;line-height:1.05;padding-right:2mm}
td.wordy{font-size:12.5pt}
tbody th{font-size:13.5pt;line-height:1.15}
label{display:flex;align-items:center;gap:2.5mm}
label>span{flex:1;min-width:0}
input{appearance:none;-webkit-appearance:none;flex:none;margin:0;width:5.5mm;height:5.5mm;border:.5mm solid;background:#fff;line-height:5mm;text-align:center}
input:checked::before{content:"\2713";font:700 13pt/4.5mm sans-serif}
ol,ul{padding:0;list-style:none}
ol{counter-reset:n}
li{margin:0 0 1.2mm}
ol li{font-size:13pt}
ol label{align-items:flex-start}
ol span::before{counter-increment:n;content:counter(n)". ";font-weight:700}
ol small{display:block;margin-left:8mm}
h4{font-size:12pt;margin:0 0 -3mm;break-after:avoid}
.pan~.pan{border-top:.25mm solid;padding-top:1mm}
dl.two{column-gap:5mm}
dl>div{padding-bottom:1mm}
dt{font-size:10pt}
dd{font-size:14pt;font-weight:700;line-height:1.1}
dd small{display:block}
dl.oven{columns:2;column-gap:4mm}
.oven dd{font-size:11.5pt}
.side{display:grid;grid-template-columns:auto 1fr;column-gap:4mm}
.side h3{grid-column:1/3}
.side dl{columns:1}
.side dt,.side dd,.side small{display:inline}
.side dd{font-size:12.5pt}
.side dt{margin-right:1.5mm}
.lines dt,.lines dd,.lines small{display:inline}
.lines{line-height:1.15}
.lines dt,.lines dd{font-size:11.5pt;line-height:inherit;margin-right:1.5mm}
.lines.two{columns:2}
.care{border:1.2mm solid;padding:0 3mm 1mm;margin-top:2mm;font-size:10.5pt;line-height:1.2}
.care h2{border:0;margin:.5mm 0;font-size:15pt}
.care li{margin-bottom:.8mm}
.pan p{line-height:1.05}
.last{margin-top:2mm}
.last h2{margin-top:0}
.hand p{border-bottom:.25mm solid;height:7mm}
@media screen{main{padding:6mm 4mm}}
@media screen and (max-width:150mm){.two,dl.two,dl.oven,.lines.two{columns:1}.side{display:block}}
)css";
}

}  // namespace tinwright
