using SplitBatch.Display.Drawing;

namespace SplitBatch.Display.WriteUp;

/// <summary>How a write-up looks on a screen, a phone and paper.</summary>
internal static class PageStyle
{
    public const string Css = $$$"""
        :root{color-scheme:light}
        body{margin:0;background:{{{Theme.Paper}}};color:{{{Theme.Text}}};font:1.0625rem/1.55 Georgia,'DejaVu Serif',serif}
        main{max-width:46rem;margin:0 auto;padding:1.5rem 1rem 4rem}
        h1,h2,h3,h4,h5,.callout-title,figcaption,table,.note,.subtitle,.ref{font-family:Verdana,'DejaVu Sans',Geneva,sans-serif}
        h1{font-size:1.7rem;line-height:1.25;margin:0 0 .5rem}
        h2{font-size:1.25rem;line-height:1.3;margin:2.2rem 0 .6rem;padding-top:.6rem;border-top:1px solid {{{Theme.Grid}}}}
        h3{font-size:1.05rem;margin:1.6rem 0 .4rem}
        h4,h5{font-size:.95rem;margin:1.2rem 0 .3rem}
        p,ul,blockquote{margin:0 0 .9rem}
        p,li,td,th,h1,h2{overflow-wrap:break-word}
        .subtitle{color:{{{Theme.Quiet}}};font-size:.95rem}
        blockquote{margin-left:0;padding-left:1rem;border-left:3px solid {{{Theme.Grid}}}}
        a{color:{{{Theme.LinkColour}}}}
        .ref{font-size:.72rem;text-decoration:none;white-space:nowrap}
        .callout{border-left:6px solid {{{Theme.LinkColour}}};background:#f4f1ea;padding:.9rem 1.1rem .2rem;margin:1.2rem 0}
        .callout-title{font-weight:bold}
        figure{margin:1.4rem 0}
        figure svg{display:block;max-width:100%;height:auto}
        figure .phone{display:none}
        figcaption,.note{font-size:.82rem;line-height:1.45;color:{{{Theme.Quiet}}};margin-top:.4rem}
        .table{overflow-x:auto;margin:1.2rem 0}
        table{border-collapse:collapse;font-size:.82rem;line-height:1.4;border-bottom:1px solid {{{Theme.Text}}};min-width:50%}
        caption{text-align:left;font-weight:bold;padding-bottom:.4rem}
        thead th{border-top:2px solid {{{Theme.Text}}};border-bottom:1px solid {{{Theme.Text}}};vertical-align:bottom}
        th,td{padding:.28rem .7rem .28rem 0;text-align:left;vertical-align:top}
        td{border-bottom:1px solid {{{Theme.Grid}}}}
        .number{text-align:right;font-variant-numeric:tabular-nums}
        tr:target{background:#f4f1ea}
        @media(max-width:30rem){body{font-size:1rem}h1{font-size:1.4rem}figure .page{display:none}figure .phone{display:block}}
        @media print{body{font-size:10.5pt}main{max-width:none;padding:0}h2,h3{break-after:avoid}figure,tr,.callout,.table.short{break-inside:avoid}caption{break-after:avoid}tr:nth-last-child(-n+3){break-before:avoid}.table{overflow:visible}table{font-size:8.5pt}a{color:inherit;text-decoration:none}figure .page{display:block!important}figure .page svg{max-height:82mm;width:auto;max-width:100%}figure .phone{display:none!important}}
        @page{margin:18mm 16mm}

        """;
}
