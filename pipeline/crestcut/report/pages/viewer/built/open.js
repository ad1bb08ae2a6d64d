/*!
built from 20796592e803d9210e4b741b882bf245966f3cd7e44664e952aef1fe29d3d1bd

three 0.187.0 (MIT)
The MIT License

Copyright © 2010-2026 three.js authors

Permission is hereby granted, free of charge, to any person obtaining a copy
of this software and associated documentation files (the "Software"), to deal
in the Software without restriction, including without limitation the rights
to use, copy, modify, merge, publish, distribute, sublicense, and/or sell
copies of the Software, and to permit persons to whom the Software is
furnished to do so, subject to the following conditions:

The above copyright notice and this permission notice shall be included in
all copies or substantial portions of the Software.

THE SOFTWARE IS PROVIDED "AS IS", WITHOUT WARRANTY OF ANY KIND, EXPRESS OR
IMPLIED, INCLUDING BUT NOT LIMITED TO THE WARRANTIES OF MERCHANTABILITY,
FITNESS FOR A PARTICULAR PURPOSE AND NONINFRINGEMENT. IN NO EVENT SHALL THE
AUTHORS OR COPYRIGHT HOLDERS BE LIABLE FOR ANY CLAIM, DAMAGES OR OTHER
LIABILITY, WHETHER IN AN ACTION OF CONTRACT, TORT OR OTHERWISE, ARISING FROM,
OUT OF OR IN CONNECTION WITH THE SOFTWARE OR THE USE OR OTHER DEALINGS IN
THE SOFTWARE.

d3-contour 4.0.3 (ISC)
Copyright 2012-2026 Mike Bostock

Permission to use, copy, modify, and/or distribute this software for any purpose
with or without fee is hereby granted, provided that the above copyright notice
and this permission notice appear in all copies.

THE SOFTWARE IS PROVIDED "AS IS" AND THE AUTHOR DISCLAIMS ALL WARRANTIES WITH
REGARD TO THIS SOFTWARE INCLUDING ALL IMPLIED WARRANTIES OF MERCHANTABILITY AND
FITNESS. IN NO EVENT SHALL THE AUTHOR BE LIABLE FOR ANY SPECIAL, DIRECT,
INDIRECT, OR CONSEQUENTIAL DAMAGES OR ANY DAMAGES WHATSOEVER RESULTING FROM LOSS
OF USE, DATA OR PROFITS, WHETHER IN AN ACTION OF CONTRACT, NEGLIGENCE OR OTHER
TORTIOUS ACTION, ARISING OUT OF OR IN CONNECTION WITH THE USE OR PERFORMANCE OF
THIS SOFTWARE.

d3-array 3.2.5 (ISC)
Copyright 2010-2026 Mike Bostock

Permission to use, copy, modify, and/or distribute this software for any purpose
with or without fee is hereby granted, provided that the above copyright notice
and this permission notice appear in all copies.

THE SOFTWARE IS PROVIDED "AS IS" AND THE AUTHOR DISCLAIMS ALL WARRANTIES WITH
REGARD TO THIS SOFTWARE INCLUDING ALL IMPLIED WARRANTIES OF MERCHANTABILITY AND
FITNESS. IN NO EVENT SHALL THE AUTHOR BE LIABLE FOR ANY SPECIAL, DIRECT,
INDIRECT, OR CONSEQUENTIAL DAMAGES OR ANY DAMAGES WHATSOEVER RESULTING FROM LOSS
OF USE, DATA OR PROFITS, WHETHER IN AN ACTION OF CONTRACT, NEGLIGENCE OR OTHER
TORTIOUS ACTION, ARISING OUT OF OR IN CONNECTION WITH THE USE OR PERFORMANCE OF
THIS SOFTWARE.

internmap 2.0.3 (ISC)
Copyright 2021 Mike Bostock

Permission to use, copy, modify, and/or distribute this software for any purpose
with or without fee is hereby granted, provided that the above copyright notice
and this permission notice appear in all copies.

THE SOFTWARE IS PROVIDED "AS IS" AND THE AUTHOR DISCLAIMS ALL WARRANTIES WITH
REGARD TO THIS SOFTWARE INCLUDING ALL IMPLIED WARRANTIES OF MERCHANTABILITY AND
FITNESS. IN NO EVENT SHALL THE AUTHOR BE LIABLE FOR ANY SPECIAL, DIRECT,
INDIRECT, OR CONSEQUENTIAL DAMAGES OR ANY DAMAGES WHATSOEVER RESULTING FROM LOSS
OF USE, DATA OR PROFITS, WHETHER IN AN ACTION OF CONTRACT, NEGLIGENCE OR OTHER
TORTIOUS ACTION, ARISING OUT OF OR IN CONNECTION WITH THE USE OR PERFORMANCE OF
THIS SOFTWARE.

delatin 0.2.0 (ISC)
ISC License

Copyright (c) 2019, Michael Fogleman, Vladimir Agafonkin

Permission to use, copy, modify, and/or distribute this software for any purpose
with or without fee is hereby granted, provided that the above copyright notice
and this permission notice appear in all copies.

THE SOFTWARE IS PROVIDED "AS IS" AND THE AUTHOR DISCLAIMS ALL WARRANTIES WITH
REGARD TO THIS SOFTWARE INCLUDING ALL IMPLIED WARRANTIES OF MERCHANTABILITY AND
FITNESS. IN NO EVENT SHALL THE AUTHOR BE LIABLE FOR ANY SPECIAL, DIRECT,
INDIRECT, OR CONSEQUENTIAL DAMAGES OR ANY DAMAGES WHATSOEVER RESULTING FROM LOSS
OF USE, DATA OR PROFITS, WHETHER IN AN ACTION OF CONTRACT, NEGLIGENCE OR OTHER
TORTIOUS ACTION, ARISING OUT OF OR IN CONNECTION WITH THE USE OR PERFORMANCE OF
THIS SOFTWARE.

smol-toml 1.9.1 (BSD-3-Clause)
Copyright (c) Squirrel Chat et al., All rights reserved.

Redistribution and use in source and binary forms, with or without
modification, are permitted provided that the following conditions are met:

1. Redistributions of source code must retain the above copyright notice, this
   list of conditions and the following disclaimer.
2. Redistributions in binary form must reproduce the above copyright notice,
   this list of conditions and the following disclaimer in the
   documentation and/or other materials provided with the distribution.
3. Neither the name of the copyright holder nor the names of its contributors
   may be used to endorse or promote products derived from this software without
   specific prior written permission.

THIS SOFTWARE IS PROVIDED BY THE COPYRIGHT HOLDERS AND CONTRIBUTORS "AS IS" AND
ANY EXPRESS OR IMPLIED WARRANTIES, INCLUDING, BUT NOT LIMITED TO, THE IMPLIED
WARRANTIES OF MERCHANTABILITY AND FITNESS FOR A PARTICULAR PURPOSE ARE
DISCLAIMED. IN NO EVENT SHALL THE COPYRIGHT HOLDER OR CONTRIBUTORS BE LIABLE
FOR ANY DIRECT, INDIRECT, INCIDENTAL, SPECIAL, EXEMPLARY, OR CONSEQUENTIAL
DAMAGES (INCLUDING, BUT NOT LIMITED TO, PROCUREMENT OF SUBSTITUTE GOODS OR
SERVICES; LOSS OF USE, DATA, OR PROFITS; OR BUSINESS INTERRUPTION) HOWEVER
CAUSED AND ON ANY THEORY OF LIABILITY, WHETHER IN CONTRACT, STRICT LIABILITY,
OR TORT (INCLUDING NEGLIGENCE OR OTHERWISE) ARISING IN ANY WAY OUT OF THE USE
OF THIS SOFTWARE, EVEN IF ADVISED OF THE POSSIBILITY OF SUCH DAMAGE.
*/
(()=>{var h={mm:.001,cm:.01,m:1,km:1e3,in:.0254,inch:.0254,inches:.0254,'"':.0254,ft:.3048,foot:.3048,feet:.3048,"'":.3048,"us-ft":.3048006096012192},m=String.raw`(?:\d+\s+\d+\s*/\s*\d+|\d+\s*/\s*\d+|\d+\.\d*|\.\d+|\d+)`,u=new RegExp(String.raw`\s*(${m})\s*(us-ft|inches|inch|feet|foot|mm|cm|km|in|ft|m|"|')(?![a-z])`,"y"),S=new RegExp(String.raw`^\s*${m}\s*$`);function w(t){let e=String(t).trim().toLowerCase().replace(/[″”]/g,'"').replace(/[′’]/g,"'");if(e=e.replaceAll("−","-").replace(/[\u00a0\u202f]/g," "),!e)throw new Error("a length is missing");if(e.includes(","))throw new Error(C(e));let n=1;"+-".includes(e[0])&&(n=e[0]==="+"?1:-1,e=e.slice(1));let o=0,s=0,i=1/0;for(;s<e.length;){u.lastIndex=s;let a=u.exec(e);if(!a||h[a[2]]>=i)break;i=h[a[2]],o+=v(a[1])*i,s=u.lastIndex}if(s===0||e.slice(s).trim())throw new Error(S.test(e)?"the unit is missing, like 140 mm or 5 1/2 in":"not understood; write it like 140 mm or 5 1/2 in");if(o>1e12)throw new Error("not a finite length");return n*o}function C(t){let e=t.split(",");if(e.length!==2||!/\d$/.test(e[0])||!/^\d/.test(e[1]))return"use a point for decimals, like 0.14 m";let n=e.join("."),o=/^\d{3}(?!\d)/.test(e[1])?` or ${e.join("")}`:"";return`write ${n}${o}, without the comma`}function v(t){let e=t.replaceAll("/"," / ").trim().split(/\s+/);if(!e.includes("/"))return parseFloat(e[0]);let n=parseInt(e[e.length-1],10);if(n===0)throw new Error("divides by zero");let o=parseInt(e[e.length-3],10)/n;if(e.length===4&&o>=1)throw new Error("the fraction is one or more; write it like 5 1/2 in");return(e.length===4?parseInt(e[0],10):0)+o}function g(t,e=1){return Number.isFinite(t)?Math.abs(t)>=1?`${t.toFixed(2)} m`:`${(t*1e3).toFixed(e)} mm`:"not measured"}function p(t,e=32){if(!Number.isFinite(t))return"not measured";let n=Math.abs(t)>=1,o=Math.round(Math.abs(t)/.0254*(n?4:e));if(o===0)return"0 in";let s=n?4:e,i=n?Math.floor(o/(12*s)):0;o-=i*12*s;let a=Math.floor(o/s),r=o%s;for(;r&&r%2===0;)r/=2,s/=2;let d=[];return i&&d.push(`${i} ft`),(a||r)&&d.push([a||"",r?`${r}/${s}`:""].filter(Boolean).join(" ")+" in"),(t<0?"-":"")+d.join(" ")}var l=document.documentElement,x=4*1024*1024,I=6,c=t=>document.getElementById(t),y=t=>new Promise(e=>setTimeout(e,t));async function b(){let t=await fetch("/progress");if(!t.ok)throw new Error(String(t.status));return t.json()}async function k(){let t=0;for(;;){try{let e=await b();if(!e.running)return location.reload();t=0,c("going-bar").value=e.share,c("going-share").textContent=`${Math.round(e.share*100)} %`,c("going-step").textContent=e.words,c("going-left").textContent=`; about ${e.left} s to go`}catch{t+=1,t>3&&(c("going-step").textContent="the program does not answer; if it was ended, start it again: nothing is lost")}await y(t>3?3e3:500)}}async function M(t,e,n){let o={name:t.name,size:t.size,modified:t.lastModified},{key:s,here:i}=await f("/upload",{method:"POST",body:JSON.stringify(o)});i&&n(i,"It goes on where it was cut off.");for(let a=0;i<t.size;)try{let r=t.slice(i,i+x);i=(await f(`/upload/${s}`,{method:"PUT",body:r,headers:{"x-offset":String(i)}})).here,a=0,n(i,"")}catch(r){if(r.told)throw r;if(a+=1,a>=I)throw new Error("The connection is gone. Choose the same file again when it is back: it goes on where it was.");n(i,"The connection was cut: trying again."),await y(1e3*a)}return f(`/upload/${s}/end?for=${e}`,{method:"POST",body:""})}async function f(t,e){let n=await fetch(t,e),o=await n.json().catch(()=>({what:"that was refused",mend:"reload this page"}));if(n.ok&&!o.what)return o;let s=new Error(`${o.what[0].toUpperCase()}${o.what.slice(1)}; ${o.mend}.`);throw s.told=!0,s}function N(t){let e=t.querySelector("input[type=file]"),n=t.querySelector("progress"),o=t.querySelector("[data-said]"),s=t.querySelector("[data-wrong]");e.addEventListener("change",async()=>{let i=e.files[0];if(!i)return;s.textContent="",n.hidden=!1,e.disabled=!0;let a=r=>(r/1e6).toFixed(r<1e7?1:0);try{let{next:r}=await M(i,t.dataset.for,(d,$)=>{n.value=d/i.size,o.textContent=`${a(d)} of ${a(i.size)} MB. ${$}`});location.assign(r)}catch(r){s.textContent=r.message,o.textContent="",n.hidden=!0}e.disabled=!1,e.value=""})}function q(t){let e=c(t.getAttribute("aria-describedby")),n=e.textContent,o=e.className,s=c("unit").value;t.addEventListener("input",()=>{let i=t.value.split(";").map(a=>a.trim());if(e.className=o,!t.value.trim()){e.textContent=n;return}try{let a=i.map(r=>w(/^[-+]?[0-9 ./]+$/.test(r)?`${r} ${s}`:r));e.textContent=a.map(r=>`${g(r)} · ${p(r)}`).join("; "),e.className="hint",t.removeAttribute("aria-invalid")}catch(a){e.textContent=a.message}})}function A(t){let e=c(t.dataset.beside),n=()=>{e.hidden=!t.value.trim()};t.addEventListener("input",n),n()}async function E(){if(!(document.visibilityState!=="visible"||l.dataset.busy))try{let{number:t}=await b();c("changed").hidden=t===l.dataset.number}catch{}}for(let t of document.querySelectorAll("[data-upload]"))N(t);for(let t of document.querySelectorAll("[data-length]"))q(t);for(let t of document.querySelectorAll("[data-beside]"))A(t);for(let t of document.querySelectorAll("[data-submit]"))t.addEventListener("change",()=>t.form.requestSubmit());for(let t of document.querySelectorAll("[data-no-script]"))t.hidden=!0;for(let t of document.querySelectorAll("[data-steps]"))t.open=matchMedia("(min-width: 60rem)").matches;document.addEventListener("visibilitychange",E);addEventListener("focus",E);for(let t of document.forms)t.addEventListener("submit",()=>{l.dataset.busy="yes"});document.querySelector("[data-progress]")&&k();l.dataset.open="ready";})();
