/// <reference lib="dom" />
/// <reference types="office-js" />

/** Excel requires its library from here. */
const officeAddress = "https://appsforoffice.microsoft.com/lib/1/hosted/office.js";

/** What the vendor's library itself looks for to tell its hosts: the window it was opened in, its address, its session. */
interface HostSigns {
  readonly search: string;
  readonly windowName: string;
  readonly framed: boolean;
  readonly session: string | null;
  readonly external: boolean;
}

/** Whether a page was opened by an Office program. In any other page nothing is fetched from elsewhere. */
export function openedByOffice({ search, windowName, framed, session, external }: HostSigns): boolean {
  return (
    external ||
    framed ||
    session !== null ||
    /[?&]_host_Info=/i.test(search) ||
    /"hostInfo"|_host_Info|_xdm_Info/i.test(windowName)
  );
}

function hostSigns(): HostSigns {
  const outside: unknown = window.external;
  const has = (name: string) => typeof outside === "object" && outside !== null && name in outside;
  let session: string | null = null;
  try {
    session = sessionStorage.getItem("hostInfoValue");
  } catch {
    // Storage may be forbidden; the other signs remain.
  }
  return {
    search: location.search,
    windowName: window.name,
    framed: window.self !== window.top,
    session,
    external: has("GetHostInfo") || has("GetContext") || "agaveHost" in window,
  };
}

/** How long the library may take to load and to find its host. [ms] */
const longestWait = 20_000;

/**
 * "excel" once Excel's library is loaded and ready, else "browser". That the library is missing, blocked or slow never
 * stops the pane.
 */
export async function findHost(): Promise<"browser" | "excel"> {
  if (!openedByOffice(hostSigns())) return "browser";
  const late = new Promise<"browser">((resolve) => setTimeout(() => resolve("browser"), longestWait));
  return Promise.race([loadOffice().catch(() => "browser" as const), late]);
}

async function loadOffice(): Promise<"browser" | "excel"> {
  if (typeof Office === "undefined") {
    await new Promise<void>((resolve, reject) => {
      const script = document.createElement("script");
      script.src = officeAddress;
      script.onload = () => resolve();
      script.onerror = () => reject(new Error("Excel's library could not be loaded"));
      document.head.append(script);
    });
  }
  const { host } = await Office.onReady();
  return host === Office.HostType.Excel ? "excel" : "browser";
}
