package evenrise.solver.rendering;

import evenrise.solver.document.Document;
import evenrise.solver.document.LabelKind;
import evenrise.solver.document.SheetLanguage;
import evenrise.solver.document.SheetWords;
import evenrise.solver.document.SiteLabel;
import evenrise.solver.document.SiteLabels;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.IntStream;

/** Labels on stock sheets, as PDF. The first page is for plain paper: what to do with the others, and the cautions. */
public final class LabelSheets {
    /**
     * Labels of one kind, printed.
     *
     * @param cut so many do not say all that they need to
     * @param withoutCode so many are too small for a code
     */
    public record Printed(byte[] pdf, int labels, int cut, int withoutCode) {}

    /** A label and where it lies on its sheet, in millimetres. */
    public record Placed(FittedLabel label, String left, String top, String codeLeft, String codeTop) {
        /** As a style sheet writes it. */
        public String millimetres(double length) {
            return LabelSheets.written(length);
        }
    }

    private static final int SHEETS_AT_ONCE = 20;
    private static final double LEAST_WIDTH = 190;
    private static final double LEAST_HEIGHT = 180;

    private final Document document;
    private final SiteLabels labels;
    private final SheetWords words;
    private final String address;

    /** @param address of the page, to which codes lead: {@code plan.html}, or in full */
    public LabelSheets(Document document, SheetWords words, String address) {
        this.document = document;
        this.labels = new SiteLabels(document, words);
        this.words = words;
        this.address = address;
    }

    public Printed of(LabelKind kind, LabelStock stock) {
        List<SiteLabel> all = labels.of(kind);
        List<FittedLabel> fitted = new ArrayList<>();
        byte[] pdf = LooseSheets.of(document, words.say("stock." + kind.word()), language(), signs(all), sheets -> {
            all.forEach(each -> fitted.add(FittedLabel.of(each, stock, link(each), sheets.fonts())));
            sheets.print("stockcover", cover(kind, stock, fitted, sheets.fonts()), plain(stock));
            List<List<Placed>> placed = PrintSections.chunks(fitted, stock.onASheet()).stream()
                    .map(sheet -> placed(sheet, stock))
                    .toList();
            for (List<List<Placed>> some : PrintSections.chunks(placed, SHEETS_AT_ONCE)) {
                sheets.print("stock", stockValues(stock, some, sheets.fonts()), paper(stock));
            }
        });
        return new Printed(pdf, all.size(), cut(fitted), withoutCode(fitted));
    }

    private static int cut(List<FittedLabel> fitted) {
        return (int) fitted.stream().filter(each -> !each.isWhole()).count();
    }

    private static int withoutCode(List<FittedLabel> fitted) {
        return (int) fitted.stream().filter(each -> each.code().isEmpty()).count();
    }

    private Map<String, Object> stockValues(LabelStock stock, List<List<Placed>> sheets, PrintFonts fonts) {
        return Map.of(
                "sheets",
                sheets,
                "document",
                document,
                "family",
                fonts.family(),
                "language",
                language(),
                "width",
                written(stock.labelWidth()),
                "height",
                written(stock.labelHeight()),
                "inner",
                written(stock.labelWidth() - 2 * FittedLabel.EDGE),
                "sheetWidth",
                written(stock.sheetWidth()),
                "sheetHeight",
                written(stock.sheetHeight() - 0.3),
                "edge",
                written(FittedLabel.EDGE));
    }

    /** What its code leads to. */
    String link(SiteLabel label) {
        return address + "#" + label.anchor();
    }

    private String language() {
        return words.language().word();
    }

    private SortedSet<Integer> signs(List<SiteLabel> all) {
        SortedSet<Integer> signs = new TreeSet<>();
        document.imprint().project().codePoints().forEach(signs::add);
        all.forEach(
                label -> label.lines().forEach(line -> line.text().codePoints().forEach(signs::add)));
        return signs;
    }

    private Map<String, Object> cover(LabelKind kind, LabelStock stock, List<FittedLabel> fitted, PrintFonts fonts) {
        int count = fitted.size();
        int cut = cut(fitted);
        int without = withoutCode(fitted);
        List<String> said = new ArrayList<>();
        said.add(words.say("stock.count", count, (count + stock.onASheet() - 1) / stock.onASheet(), stock.onASheet()));
        said.add(words.say(
                "stock.size",
                words.number(written(stock.labelWidth())),
                words.number(written(stock.labelHeight())),
                stock.columns(),
                stock.rows()));
        said.add(words.say("stock.print"));
        said.add(words.say("stock.code", address));
        if (words.language() != SheetLanguage.EN) {
            said.add(words.say("stock.said"));
        }
        if (document.isBroken()) {
            said.add(words.say("stock.broken"));
        }
        if (without > 0) {
            said.add(words.say("stock.without-code", without));
        }
        if (cut > 0) {
            said.add(words.say("stock.cut", cut));
        }
        return Map.of(
                "document", document,
                "family", fonts.family(),
                "language", language(),
                "title", words.say("stock." + kind.word()),
                "revision",
                        words.say(
                                "stock.revision",
                                document.imprint().revision(),
                                document.imprint().date()),
                "said", said,
                "cautionsTitle", words.say("stock.cautions"),
                "cautions", words.cautions());
    }

    private static String paper(LabelStock stock) {
        return written(stock.sheetWidth()) + "mm " + written(stock.sheetHeight()) + "mm";
    }

    /** The first page has more to say than a small sheet holds. */
    private static String plain(LabelStock stock) {
        return stock.sheetWidth() < LEAST_WIDTH || stock.sheetHeight() < LEAST_HEIGHT ? "210mm 297mm" : paper(stock);
    }

    private static List<Placed> placed(List<FittedLabel> sheet, LabelStock stock) {
        return IntStream.range(0, sheet.size())
                .mapToObj(i -> {
                    double side = sheet.get(i).code().map(LinkCode::side).orElse(0.0);
                    return new Placed(
                            sheet.get(i),
                            written(stock.left(i)),
                            written(stock.top(i)),
                            written(stock.labelWidth() - side - 0.5),
                            written((stock.labelHeight() - side) / 2));
                })
                .toList();
    }

    static String written(double millimetres) {
        String text = String.format(Locale.ROOT, "%.3f", millimetres);
        return text.replaceFirst("\\.?0+$", "");
    }
}
