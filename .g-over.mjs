import { chromium } from "playwright-core";
const browser = await chromium.launch({ executablePath: "/usr/bin/chromium", args: ["--headless","--no-sandbox","--disable-gpu","--disable-quic","--no-first-run","--disable-background-networking"] });
const page = await browser.newPage({ viewport: { width: 390, height: 844 } });
await page.goto("http://127.0.0.1:8791/#/parts"); await page.waitForTimeout(2500);
console.log(await page.evaluate(() => [...document.querySelectorAll("body *")].filter(e => e.getBoundingClientRect().right > innerWidth+1 && !e.closest(".table-box table")).slice(0,12).map(e => e.tagName+"."+e.className+" "+Math.round(e.getBoundingClientRect().width)).join("\n")));
await browser.close();
