// Tells helping.js when a time is over.
"use strict";
onmessage = ({ data: [id, ms] }) => { setTimeout(() => postMessage(id), ms); };
