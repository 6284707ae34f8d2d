package evenrise.solver.document;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.plan.Quantity;
import evenrise.model.project.Panel;
import evenrise.model.review.ElectricalReview;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import evenrise.solver.browser.DrawnPages;
import evenrise.solver.rendering.PrintedSheets;
import evenrise.solver.rendering.SheetSection;
import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

/** What is fixed to equipment says what was computed, and of nothing else that it was. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class EquipmentPlatesTest {
    private Layout layout;
    private Document document;

    @BeforeAll
    void plan() {
        DrawnPages.Planned planned = DrawnPages.of("meridian-hall");
        layout = planned.layout();
        document = planned.document();
    }

    @Test
    void everyPointHasALabelWithTheFaultCurrentOfTheReview() {
        List<EquipmentLabel> labels = document.tables().equipment().rows();
        List<Quantity> faults = ElectricalReview.of(layout).quantities().stream()
                .filter(each -> each.name().equals("greatest fault current"))
                .toList();

        assertThat(labels).hasSize(layout.distribution().points().size());
        assertThat(faults).hasSize(labels.size());
        for (Quantity fault : faults) {
            EquipmentLabel label = labels.stream()
                    .filter(each -> each.place().equals(fault.place()))
                    .findFirst()
                    .orElseThrow();
            assertThat(label.fault()).contains(fault);
            assertThat(label.faultAmps().orElseThrow())
                    .isGreaterThanOrEqualTo(fault.value())
                    .isLessThan(fault.value() + 1);
        }
    }

    @Test
    void whatNoStudyGaveIsNotCalculated() {
        List<List<String>> values = document.tables().equipment().values();
        List<String> heads = values.get(0);

        for (String figure : List.of("Clearing time", "Incident energy", "Arc-flash boundary")) {
            int column = heads.indexOf(figure);
            assertThat(values.subList(1, values.size()))
                    .allSatisfy(row -> assertThat(row.get(column)).isEqualTo("not calculated"));
        }
    }

    @Test
    void aPlaceWithoutAKnownSourceSaysSo() {
        EquipmentLabel bare = new EquipmentLabel(
                "P", "panel", "230 V", "supply", Optional.empty(), OptionalDouble.of(6000), Optional.empty());

        assertThat(bare.faultInWords()).isEqualTo("not calculated");
        assertThat(bare.isOver()).isFalse();
    }

    @Test
    void marksWhatInterruptsLessThanTheFault() {
        EquipmentLabel weak = new EquipmentLabel(
                "P",
                "panel",
                "230 V",
                "supply",
                Optional.of(new Quantity("P", "greatest fault current", 6001, "A")),
                OptionalDouble.of(6000),
                Optional.empty());

        assertThat(weak.isOver()).isTrue();
        assertThat(weak.faultInWords()).isEqualTo("6.1 kA");
    }

    /** A motor that feeds back raises the current, and none is counted. */
    @Test
    void callsNoFaultCurrentABoundThatLeavesMotorsOut() throws IOException {
        byte[] printed = new PrintedSheets(document, List.of(SheetSection.EQUIPMENT)).on(PrintedSheets.Paper.A4);
        try (PDDocument pdf = Loader.loadPDF(printed)) {
            String text = new PDFTextStripper().getText(pdf).replaceAll("\\s+", " ");
            long labels = document.tables().equipment().rows().stream()
                    .filter(each -> each.fault().isPresent())
                    .count();

            assertThat(labels).isPositive();
            assertThat(Pattern.compile(", without motors that feed back")
                            .matcher(text)
                            .results())
                    .hasSize((int) labels);
            assertThat(text.substring(text.lastIndexOf("Equipment labels"))).doesNotContain("at most");
        }
    }

    @Test
    void theDirectoryHasEverySlotOfEveryPanelOnce() {
        for (Panel panel : layout.project().panels()) {
            List<Integer> slots = document.tables().directory().rows().stream()
                    .filter(each -> each.panel().equals(panel.id()))
                    .flatMap(each -> Arrays.stream(each.slots().split(", ")))
                    .map(Integer::parseInt)
                    .sorted()
                    .toList();

            assertThat(slots)
                    .isEqualTo(IntStream.rangeClosed(1, panel.slots()).boxed().toList());
        }
    }

    @Test
    void noTwoCircuitsAreDescribedAlikeAndEachSaysWhatItIsFor() {
        List<DirectoryLine> circuits = document.tables().directory().rows().stream()
                .filter(each -> !List.of("space", "spare", "reserved").contains(each.purpose()))
                .toList();

        assertThat(circuits.stream().map(DirectoryLine::purpose)).doesNotHaveDuplicates();
        assertThat(circuits).hasSize(layout.placements().size());
        for (Placement each : layout.placements()) {
            assertThat(circuits)
                    .anyMatch(line -> line.purpose().contains(each.id())
                            && line.purpose().contains(each.load().name())
                            && line.panel().equals(each.assignment().panel()));
        }
    }

    @Test
    void aCircuitWithoutANameIsMarked() {
        assertThat(document.tables().directory().rows())
                .filteredOn(each -> !each.isNamed())
                .isEmpty();
        assertThat(new DirectoryLine("P", "supply", 1, "1", "L1", "20/1", false).isNamed())
                .isFalse();
    }
}
