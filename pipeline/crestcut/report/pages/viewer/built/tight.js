/*!
built from 2579a5051af46be435a1cf4b80ae30b8c73763ce7bfe69967a438ba22c673363
*/
(()=>{var{byId:n,Drive:u,fillDrawing:w,Raster:s,unpackLayer:o}=crestcutViewer;async function l(){let i=n("tight"),r=await fetch("/tight");if(!r.ok)return;let t=await r.json();if(!t.drive)return;let e={data:t,units:document.documentElement.dataset.units};e.height=new s(t.grid,await o(t.height)),e.drive=await u.of(t),e.depth=t.depth?new s(t.grid,await o(t.depth)):null;let[c,a]=t.drive.contact.on;e.atWorst={x:c,y:a},n("tight-picture").hidden=!0,i.hidden=!1;let h=()=>w(e,e.drive.worst,a,i,n("tight-words")),d=0;new ResizeObserver(()=>{i.clientWidth!==d&&(d=i.clientWidth,h())}).observe(i),document.documentElement.dataset.ready="yes"}l();})();
