package evenrise.solver.app;

import evenrise.model.contract.Harmless;
import evenrise.solver.document.Document;
import evenrise.solver.document.LabelKind;
import evenrise.solver.document.SheetWords;
import evenrise.solver.rendering.LabelSheets;
import evenrise.solver.rendering.LabelStock;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Which labels are printed on which stock. */
final class LabelFiles {
    private static final int LONGEST_ADDRESS = 300;

    private final Map<LabelKind, LabelStock> stocks = new EnumMap<>(LabelKind.class);
    private final String address;

    /** @throws JobFailed where a kind or a stock is unknown, or labels do not fit on their sheet */
    LabelFiles(LabelOrder wanted) {
        this.address = wanted.address();
        if (address.isBlank() || address.contains("#") || address.length() > LONGEST_ADDRESS) {
            throw new JobFailed(
                    JobFailed.Reason.REQUEST,
                    "--label-link is '" + Harmless.shown(Harmless.cut(address, LONGEST_ADDRESS))
                            + "', expected the page's address without #, of at most " + LONGEST_ADDRESS
                            + " characters, such as https://example.org/plan.html.");
        }
        wanted.stocks().forEach(this::add);
    }

    private void add(String text) {
        int sign = text.indexOf('=');
        LabelStock stock = LabelStock.of(text.substring(sign + 1)).orElseThrow(() -> refused(text));
        if (sign < 0) {
            // Equipment labels need more room than most stock has: they are asked for by name.
            List.of(LabelKind.BREAKER, LabelKind.CABLE, LabelKind.LEAD).forEach(kind -> stocks.put(kind, stock));
        } else {
            stocks.put(LabelKind.of(text.substring(0, sign)).orElseThrow(() -> refused(text)), stock);
        }
    }

    private static JobFailed refused(String text) {
        return new JobFailed(
                JobFailed.Reason.REQUEST,
                "--labels is '" + Harmless.shown(Harmless.cut(text, LONGEST_ADDRESS))
                        + "', expected a stock, or one for a"
                        + " kind ("
                        + LabelKind.ALL.stream().map(LabelKind::word).collect(Collectors.joining(", "))
                        + "), such as cable=a4-63.5x38.1. Stocks: "
                        + String.join(", ", LabelStock.NAMED.keySet()) + ", or in millimetres " + LabelStock.FORM
                        + ", such as 210x297:70x37:3x8:0x0.5:0x0, with all labels on the sheet and each at least 15 by 8.");
    }

    /** @throws JobFailed where labels that warn would not say all of it */
    Map<String, byte[]> of(Document document, SheetWords words) {
        LabelSheets sheets = new LabelSheets(document, words, address);
        Map<String, byte[]> files = new LinkedHashMap<>();
        stocks.forEach((kind, stock) -> {
            LabelSheets.Printed printed = sheets.of(kind, stock);
            if (kind == LabelKind.EQUIPMENT && printed.cut() > 0) {
                throw new JobFailed(
                        JobFailed.Reason.REQUEST,
                        "--labels: equipment labels warn, and " + printed.cut() + " of " + printed.labels()
                                + " would not say all of it on this stock. Take a larger one, such as"
                                + " equipment=a4-99.1x67.7.");
            }
            if (printed.labels() > 0) {
                files.put("labels-" + kind.word() + ".pdf", printed.pdf());
            }
        });
        return files;
    }
}
