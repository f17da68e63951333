using System.Buffers.Text;
using System.Globalization;
using System.Net;
using System.Text;

namespace SplitBatch.Kernel.Pages;

/// <summary>What every page has in common: head, style, foot. Pages ask nothing of any other place.</summary>
internal static class PageParts
{
    /// <summary>The page up to its body.</summary>
    /// <param name="title">Its title.</param>
    /// <param name="bodyClass">What kind of page it is.</param>
    /// <param name="scripts">The scripts that it may run, as words of its content security policy; none when empty.</param>
    /// <param name="styles">Style elements besides the page's own.</param>
    public static StringBuilder Start(string title, string bodyClass, string scripts = "", string styles = "") => new StringBuilder()
        .Append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n")
        .Append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
        .Append("<meta name=\"color-scheme\" content=\"light\">\n")
        .Append(CultureInfo.InvariantCulture, $"<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; "
            + $"{(scripts.Length > 0 ? $"script-src {scripts}; " : "")}style-src 'unsafe-inline'; img-src data: blob:; font-src data:; "
            + $"base-uri 'none'; form-action 'none'\">\n")
        .Append("<meta name=\"generator\" content=\"SplitBatch\">\n")
        .Append("<title>").Append(Text(title)).Append("</title>\n<style>\n").Append(Style).Append("</style>\n").Append(styles)
        .Append("</head>\n<body class=\"").Append(bodyClass).Append("\">\n");

    public static string End => "</body>\n</html>\n";

    public static string Text(string text) => WebUtility.HtmlEncode(text);

    /// <summary>
    /// The address of a picture that the page itself holds; null where the type is no picture's or the data are not Base64.
    /// </summary>
    public static string? Address(string type, string base64)
    {
        var data = string.Concat(base64.Where(c => !char.IsWhiteSpace(c)));
        var isPicture = type is "image/png" or "image/jpeg" or "image/gif" or "image/webp" or "image/svg+xml";
        return isPicture && Base64.IsValid(data) ? $"data:{type};base64,{data}" : null;
    }

    private const string Style = """
        :root{--ink:#1c1c1c;--quiet:#595959;--line:#d9d5cc;--soft:#f6f4ef;--link:#0b5394;--bad:#a3231f}
        *{box-sizing:border-box}
        html{-webkit-text-size-adjust:100%}
        body{margin:0;color:var(--ink);background:#fff;
            font:17px/1.55 system-ui,-apple-system,"Segoe UI",Roboto,"Helvetica Neue",Arial,sans-serif}
        main,header.page,footer,nav.page{max-width:50rem;margin:0 auto;padding:0 1.1rem}
        nav.page{padding-top:.9rem;font-size:.9rem}
        main{padding-bottom:2rem}
        h1{font-size:1.9rem;line-height:1.2;margin:1.2rem 0 .6rem}
        h2{font-size:1.35rem;line-height:1.25;margin:2.2rem 0 .5rem}
        h3{font-size:1.1rem;margin:1.6rem 0 .4rem}
        p,ul,ol,dl,blockquote{margin:.6rem 0}
        .prose{max-width:42rem}
        .prose img{max-width:100%}
        a{color:var(--link)}
        blockquote{border-left:4px solid #c98a00;background:var(--soft);margin-left:0;padding:.3rem 1rem}
        code,pre{font-family:ui-monospace,"Cascadia Mono","SF Mono",Menlo,Consolas,"DejaVu Sans Mono",monospace;font-size:.86em}
        p code,li code,td code{background:var(--soft);padding:.1em .3em;border-radius:3px}
        pre{margin:0;white-space:pre-wrap;overflow-wrap:anywhere;line-height:1.45}
        pre code{font-size:inherit}
        .prose pre{background:var(--soft);padding:.7rem .9rem;border-radius:4px}
        .code{margin:1rem 0 .4rem;background:var(--soft);border-left:3px solid var(--line);border-radius:0 4px 4px 0;padding:.65rem .9rem}
        .code .k{color:#0033a0}.code .s{color:#8a3a00}.code .n{color:#6b2c91}.code .c,.code .d{color:#4d6b4d}
        .code .c{font-style:italic}
        .given{border-left-color:#c98a00}
        .out{margin:.4rem 0 1.4rem;overflow-x:auto}
        .out table{border-collapse:collapse;font-variant-numeric:tabular-nums}
        .out th,.out td{padding:.2rem .6rem}
        .out img,.out>svg{max-width:100%;height:auto}
        .out pre{padding:.1rem 0 .1rem .9rem}
        .out pre.stderr{border-left:3px solid #c98a00}
        .out .error{border-left:4px solid var(--bad);background:#fdf3f2;padding:.6rem .9rem}
        .out .error pre{padding:0}
        .prose table,.list table{border-collapse:collapse;margin:.8rem 0}
        .prose th,.prose td,.list th,.list td{border-bottom:1px solid var(--line);
            padding:.3rem .7rem .3rem 0;text-align:left;vertical-align:top}
        .failed{color:var(--bad)}
        .banner{border:1px solid var(--bad);border-left-width:6px;padding:.6rem .9rem;margin:1rem 0}
        footer{color:var(--quiet);font-size:.85rem;padding-top:1rem;padding-bottom:2rem;border-top:1px solid var(--line)}
        .list ol{padding-left:1.3rem}.list li{margin:.9rem 0}.list .note{color:var(--quiet);font-size:.92rem;margin:.1rem 0}
        @media(max-width:480px){body{font-size:16px}h1{font-size:1.55rem}
            main,header.page,footer,nav.page{padding-left:.8rem;padding-right:.8rem}.code{padding:.55rem .6rem}}
        @media print{
        @page{margin:18mm 16mm}
        body{font-size:10.5pt}nav.page{display:none}main,header.page,footer{max-width:none;padding-left:0;padding-right:0}
        .out{overflow:visible}
        h1,h2,h3,.code{break-after:avoid}
        .out table,.out svg,.out img,.split-batch-chart,.code{break-inside:avoid}
        a{color:inherit}details:not([open]){display:none}
        }

        """;
}
