package evenrise.solver.document;

import evenrise.model.contract.Decimals;
import evenrise.model.project.Phase;
import evenrise.model.rules.Layout;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/** What is measured of whole panels and of devices on site, beside what is planned. Keys stay as they are: filled tables are read. */
final class SiteTables {
    private static final String TESTS = SheetWords.in(SheetLanguage.EN).say("test.panels");
    private static final String RESIDUAL = SheetWords.in(SheetLanguage.EN).say("residual.note");

    private static final String METERS =
            "A class of 2 in a range of 100 A is 2 % of range. Where a meter states nothing, 3 % of the reading and 0.05 A"
                    + " are taken, and half a second for times by hand (common practice, no source).";

    private static final int DECIMALS = 2;

    private final Layout layout;

    SiteTables(Layout layout) {
        this.layout = layout;
    }

    /** A row a panel. */
    DocumentTable<PanelTest> tests() {
        List<Phase> phases = NodeTables.phases(layout);
        List<Column<PanelTest>> columns = new ArrayList<>(List.of(
                Column.text("panel", "Panel", PanelTest::panel),
                Column.text("voltage", "Nominal", PanelTest::voltage)));
        phases.forEach(phase -> columns.add(Column.blank("voltage" + phase, "Measured " + phase + " to neutral, V")));
        for (Phase phase : phases) {
            columns.add(Column.number(
                    "idle" + phase,
                    "Idle planned " + phase,
                    "A",
                    rounded(NodeTables.of(PanelTest::idleAmps, phase)),
                    ""));
            columns.add(Column.blank("idleMeasured" + phase, "Idle measured " + phase + ", A"));
        }
        for (Phase phase : phases) {
            columns.add(Column.number(
                    "running" + phase,
                    "Running planned " + phase,
                    "A",
                    rounded(NodeTables.of(test -> test.use().runningAmps(), phase)),
                    ""));
            columns.add(Column.blank("runningMeasured" + phase, "Running measured " + phase + ", A"));
        }
        for (Phase phase : phases) {
            columns.add(Column.number(
                    "peak" + phase,
                    "Peak planned " + phase,
                    "A",
                    rounded(test -> test.use().peaks().stream()
                            .filter(peak -> peak.phase() == phase)
                            .mapToDouble(peak -> peak.amps())
                            .findFirst()),
                    ""));
            columns.add(Column.blank("peakMeasured" + phase, "Peak measured " + phase + ", A"));
        }
        columns.addAll(List.of(
                Column.number(
                        "neutral",
                        "Neutral planned",
                        "A",
                        test -> rounded(test.use().neutralAmps())),
                Column.number(
                        "neutralWorst",
                        "Neutral, worst use",
                        "A",
                        test -> rounded(test.use().neutralWorstUseAmps())),
                Column.blank("neutralMeasured", "Neutral measured, A"),
                Column.blank("rotation", "Phase rotation"),
                Column.blank("insulation", "Insulation, MΩ"),
                Column.blank("torque", "Lugs torqued, N·m"),
                Column.blank("result", "Pass or fail"),
                Column.blank("date", "Date"),
                Column.blank("meter", "Meter"),
                Column.blank("initials", "Initials")));
        return DocumentTable.of("tests", "Whole panels: planned and measured", TESTS, columns, PanelTest.of(layout));
    }

    /** What nobody reads finer on site: a sum of tenths would else end in bits of the machine. */
    private static double rounded(double amps) {
        return Double.parseDouble(Decimals.fixed(amps, DECIMALS));
    }

    private static Function<PanelTest, OptionalDouble> rounded(Function<PanelTest, OptionalDouble> amps) {
        return test -> {
            OptionalDouble exact = amps.apply(test);
            return exact.isPresent() ? OptionalDouble.of(rounded(exact.getAsDouble())) : exact;
        };
    }

    /** The same of the supply and of nodes: what feeders carry. */
    DocumentTable<PanelTest> feeders() {
        DocumentTable<PanelTest> panels = tests();
        return DocumentTable.of(
                "feeders",
                "Supply and feeders: planned and measured",
                TESTS,
                panels.columns().stream()
                        .map(each ->
                                each.key().equals("panel") ? Column.text("place", "Place", PanelTest::panel) : each)
                        .toList(),
                PanelTest.ofFeeders(layout));
    }

    /** What was measured with; rows name them in their column Meter. */
    static DocumentTable<String> meters() {
        return DocumentTable.of(
                "meters",
                "Meters: what they are and how far they may be off",
                METERS,
                List.of(
                        Column.text("meter", "Meter", each -> each),
                        Column.blank("what", "Make, type, serial number"),
                        Column.blank("calibrated", "Calibrated until"),
                        Column.blank("range", "Range, A"),
                        Column.blank("ofRange", "Off by, % of range"),
                        Column.blank("ofReading", "Off by, % of reading"),
                        Column.blank("seconds", "Off by, s")),
                List.of("M1", "M2", "M3", "M4"));
    }

    /** None where the project states no such device. */
    Optional<DocumentTable<ResidualTest>> residual() {
        List<ResidualTest> devices = ResidualTest.of(layout);
        return devices.isEmpty()
                ? Optional.empty()
                : Optional.of(DocumentTable.of(
                        "residual",
                        "Residual-current devices",
                        RESIDUAL,
                        List.of(
                                Column.text("place", "Place", ResidualTest::place),
                                Column.text("protects", "Protects", ResidualTest::protects),
                                Column.number("rated", "Rated", "mA", ResidualTest::ratedMilliamps),
                                Column.number("most", "Leakage at most", "mA", ResidualTest::leakageMilliamps)
                                        .calculated(any -> "0.3*[rated]"),
                                Column.blank("leakage", "Leakage measured, mA"),
                                Column.blank("trippedAt", "Tripped at, mA"),
                                Column.blank("trippedAfter", "Tripped after, ms"),
                                Column.blank("result", "Pass or fail"),
                                Column.blank("initials", "Initials")),
                        devices));
    }
}
