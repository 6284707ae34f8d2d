package evenrise.solver.document;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.plan.Assignment;
import evenrise.model.plan.Plan;
import evenrise.model.project.OnEmergency;
import evenrise.model.project.Project;
import evenrise.model.project.ShutdownGroup;
import evenrise.model.rules.Layout;
import evenrise.solver.browser.DrawnPages;
import evenrise.solver.rendering.HtmlPage;
import evenrise.solver.rendering.PrintedSheets;
import evenrise.solver.report.GroupUse;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

/**
 * What is said of switched loads that a broken plan gives no output. The amplifiers amp-1, amp-3 and amp-4 are of a group
 * that drops, amp-2 is behind the contactor of amp-1; amp-1 and amp-3 lose their outputs, amp-4 is left out.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class BrokenPlanDocumentsTest {
    private static final String NO_OUTPUT = "no output switches it";

    private Document document;
    private Layout layout;

    @BeforeAll
    void breakThePlan() {
        Project plain = Plants.read(Plants.twoHalls());
        Project project = plain.with()
                .shutdownGroups(List.of(ShutdownGroup.builder()
                        .id("amps")
                        .onEmergency(OnEmergency.DROP)
                        .build()))
                .loads(plain.loads().stream()
                        .map(each -> List.of("amp-1", "amp-3", "amp-4", "fans").contains(each.id())
                                ? each.withShutdownGroup(Optional.of("amps"))
                                : each)
                        .toList())
                .build();
        Plan whole = DrawnPages.of(plain, 300).layout().plan();
        layout = Layout.of(
                project,
                whole.withAssignments(whole.assignments().stream()
                        .filter(each -> !each.load().equals("amp-4"))
                        .map(each -> List.of("amp-1", "amp-3").contains(each.load()) ? withoutOutput(each) : each)
                        .toList()));
        document = DrawnPages.of(layout).document();
    }

    private static Assignment withoutOutput(Assignment of) {
        return of.with()
                .board(Optional.empty())
                .output(OptionalInt.empty())
                .onSeconds(OptionalDouble.empty())
                .offSeconds(OptionalDouble.empty())
                .build();
    }

    @Test
    void isNeverThatTheyAreAlwaysOn() {
        Map<String, PlannedCircuit> circuits = document.tables().circuits().rows().stream()
                .collect(Collectors.toMap(PlannedCircuit::load, Function.identity()));

        assertThat(circuits.get("amp-3").control()).isEqualTo(NO_OUTPUT);
        assertThat(circuits.get("amp-1").control()).isEqualTo(NO_OUTPUT);
        assertThat(circuits.get("amp-2").control()).isEqualTo("with amp-1; " + NO_OUTPUT);
        assertThat(circuits.get("exit").control()).isEqualTo("always on");
        for (DocumentTable<?> table : document.tables().all()) {
            for (List<String> row : table.values()) {
                if (row.contains("amp-1") || row.contains("amp-2") || row.contains("amp-3")) {
                    assertThat(row).as(table.id()).doesNotContain("always on");
                }
            }
        }
        assertThat(row(document.tables().circuits(), "amp-3")).contains("not assigned");
        assertThat(row(document.tables().peak(), "amp-3")).contains("not assigned");
        assertThat(row(document.tables().circuits(), "exit")).contains("always on");
    }

    @Test
    void isWrittenInTheScheduleOfTheirPanel() {
        Map<String, String> on = document.schedules().stream()
                .flatMap(each -> each.rows().stream())
                .flatMap(each -> java.util.stream.Stream.of(each.left(), each.right()))
                .filter(each -> each.state().equals("load"))
                .collect(Collectors.toMap(Schedule.Slot::load, Schedule.Slot::on));

        assertThat(on).containsEntry("amp-3", "no output").containsEntry("exit", "always");
    }

    @Test
    void isThatNoEmergencyReachesThem() {
        Map<String, String> effects = document.tables().emergency().rows().stream()
                .collect(Collectors.toMap(each -> each.circuit().load(), EmergencyEffect::effect));

        assertThat(effects)
                .containsEntry("amp-1", NO_OUTPUT)
                .containsEntry("amp-2", NO_OUTPUT)
                .containsEntry("amp-3", NO_OUTPUT)
                .containsEntry("fans", "drops")
                .containsEntry("exit", "stays on");
        assertThat(document.tables().emergency().note()).contains("leaves out").contains("amp-4");
        assertThat(document.tables().groups().rows().get(0).notAssigned())
                .containsExactly("amp-1", "amp-2", "amp-3", "amp-4");
        assertThat(GroupUse.of(layout).get(0).notAssigned()).contains("amp-4");
    }

    @Test
    void isOnPaperAndOnThePage() throws IOException {
        String printed;
        try (PDDocument pdf = Loader.loadPDF(new PrintedSheets(document).on(PrintedSheets.Paper.A4))) {
            printed = new PDFTextStripper().getText(pdf).replaceAll("\\s+", " ");
        }

        assertThat(printed)
                .contains("leaves out, with no breaker and no output: amp-4", "no output switches amp-1, amp-2, amp-3");
        // The page plays -1 as always on and -2 as not assigned.
        assertThat(document.loads())
                .filteredOn(each -> each.on() < 0)
                .extracting(PlayedLoad::id, PlayedLoad::on)
                .containsExactlyInAnyOrder(
                        org.assertj.core.groups.Tuple.tuple("amp-1", -2.0),
                        org.assertj.core.groups.Tuple.tuple("amp-2", -2.0),
                        org.assertj.core.groups.Tuple.tuple("amp-3", -2.0),
                        org.assertj.core.groups.Tuple.tuple("exit", -1.0));
        assertThat(HtmlPage.of(document)).contains(NO_OUTPUT);
    }

    private static List<String> row(DocumentTable<?> table, String load) {
        return table.values().stream()
                .filter(each -> each.contains(load))
                .findFirst()
                .orElseThrow();
    }
}
