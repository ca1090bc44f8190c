import { escapeXml } from "../../workbook/xml/escapeXml.ts";

/** What a page of one folder may do, as its own policy in its `<meta>` says. */
function policyIn(page: string): string {
  const policy = /http-equiv="Content-Security-Policy"\s+content="([^"]+)"/.exec(page)?.[1];
  if (policy === undefined) throw new Error("the page states no content security policy");
  return policy;
}

/**
 * Ready files with the headers that the usual static hosts send: the page's own policy, no guessing of kinds, and leave
 * for Excel on the web to fetch functions.json from another address. Each kind of host reads the file it knows.
 *
 * @param page - the page of the folder, which states its policy
 * @param crossOrigin - a file that other addresses may fetch, if any
 */
export function hostHeaders(page: string, crossOrigin?: string): ReadonlyMap<string, string> {
  const headers = [
    ["Content-Security-Policy", policyIn(page)],
    ["X-Content-Type-Options", "nosniff"],
    ["Referrer-Policy", "no-referrer"],
    // Asked for again each time, and sent again when it is another: so an update arrives.
    ["Cache-Control", "no-cache"],
  ] as const;
  const forAll = ["Access-Control-Allow-Origin", "*"] as const;
  return new Map([
    [
      "_headers",
      [
        "/*",
        ...headers.map(([name, value]) => `  ${name}: ${value}`),
        ...(crossOrigin === undefined ? [] : [`/${crossOrigin}`, `  ${forAll.join(": ")}`]),
        "",
      ].join("\n"),
    ],
    [
      ".htaccess",
      [
        "# Apache, with mod_headers.",
        ...headers.map(([name, value]) => `Header always set ${name} "${value}"`),
        ...(crossOrigin === undefined
          ? []
          : [`<Files "${crossOrigin}">`, `  Header always set ${forAll[0]} "${forAll[1]}"`, "</Files>"]),
        "",
      ].join("\n"),
    ],
    ["web.config", webConfig(headers, crossOrigin === undefined ? undefined : { file: crossOrigin, header: forAll })],
    [
      "nginx.conf.txt",
      [
        "# To be put into the server's block, at the location of these files.",
        ...headers.map(([name, value]) => `add_header ${name} "${value}" always;`),
        ...(crossOrigin === undefined
          ? []
          : [
              "# A location with headers of its own takes over none of those above.",
              `location ~ /${crossOrigin.replaceAll(".", "\\.")}$ {`,
              ...[...headers, forAll].map(([name, value]) => `  add_header ${name} "${value}" always;`),
              "}",
            ]),
        "",
      ].join("\n"),
    ],
  ]);
}

type Header = readonly [string, string];

const customHeaders = (headers: readonly Header[], indent: string): readonly string[] => [
  `${indent}<httpProtocol>`,
  `${indent}  <customHeaders>`,
  ...headers.map(([name, value]) => `${indent}    <add name="${name}" value="${escapeXml(value)}" />`),
  `${indent}  </customHeaders>`,
  `${indent}</httpProtocol>`,
];

const webConfig = (headers: readonly Header[], extra: { file: string; header: Header } | undefined): string =>
  [
    '<?xml version="1.0" encoding="utf-8"?>',
    "<configuration>",
    "  <system.webServer>",
    ...customHeaders(headers, "    "),
    "  </system.webServer>",
    ...(extra === undefined
      ? []
      : [
          `  <location path="${extra.file}">`,
          "    <system.webServer>",
          ...customHeaders([extra.header], "      "),
          "    </system.webServer>",
          "  </location>",
        ]),
    "</configuration>",
    "",
  ].join("\n");
