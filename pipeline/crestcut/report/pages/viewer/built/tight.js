/*!
built from a0817c0a9c47812722aa4fdb5757c4cf0837ccc4a23efef2caaebb11740f9e1f
*/
(()=>{var{byId:n,Drive:u,fillDrawing:w,Raster:s,unpackLayer:o}=crestcutViewer;async function l(){let i=n("tight"),r=await fetch("/tight");if(!r.ok)return;let t=await r.json();if(!t.drive)return;let e={data:t,units:document.documentElement.dataset.units};e.height=new s(t.grid,await o(t.height)),e.drive=await u.of(t),e.depth=t.depth?new s(t.grid,await o(t.depth)):null;let[c,a]=t.drive.contact.on;e.atWorst={x:c,y:a},n("tight-picture").hidden=!0,i.hidden=!1;let h=()=>w(e,e.drive.worst,a,i,n("tight-words")),d=0;new ResizeObserver(()=>{i.clientWidth!==d&&(d=i.clientWidth,h())}).observe(i),document.documentElement.dataset.ready="yes"}l();})();
