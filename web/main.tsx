/** The page: the card's styles, the app's own, and the app. */
import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import "../src/report/styles/card.css";
import "./styles/app.css";
import { App } from "./app.tsx";

const root = document.getElementById("app");
if (root !== null) {
  createRoot(root).render(
    <StrictMode>
      <App />
    </StrictMode>,
  );
}
