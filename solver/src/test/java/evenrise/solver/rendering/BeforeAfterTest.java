package evenrise.solver.rendering;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.evaluation.Evaluation;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import evenrise.solver.document.AffectedSheet;
import evenrise.solver.document.ChangeTables;
import evenrise.solver.document.ChangedCell;
import evenrise.solver.document.Document;
import evenrise.solver.document.Documents;
import evenrise.solver.document.FigureChange;
import evenrise.solver.document.Imprint;
import evenrise.solver.document.KindOfChange;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** A plan beside an earlier one: what changed, cell by cell, counted by kind, marked on the sheets. */
class BeforeAfterTest {
    private static Project project() {
        return aProject()
                .boards(aBoard("B1"), aBoard("B2"))
                .loads(aLoad("one"), aLoad("two"), aLoad("three"), aLoad("four"))
                .build();
    }

    private static Plan was() {
        return aPlan().assignments(
                        anAssignment("one").at("P1", 1).on("B1", 1),
                        anAssignment("two").at("P1", 2).on("B1", 2),
                        anAssignment("three").at("P1", 3).on("B2", 1),
                        anAssignment("four").at("P1", 4).on("B2", 8))
                .build();
    }

    /** One load to another slot and so to another phase, one to another output; two stay. */
    private static Plan is() {
        return aPlan().assignments(
                        anAssignment("one").at("P1", 9).on("B1", 1),
                        anAssignment("two").at("P1", 2).on("B1", 5),
                        anAssignment("three").at("P1", 3).on("B2", 1),
                        anAssignment("four").at("P1", 4).on("B2", 8))
                .build();
    }

    private static Document document(Project project, Plan now, Project earlier, Plan before) {
        return Documents.of(
                new Imprint(project.name(), "B", "2026-01-02", "0123456789abcdef".repeat(4), "0.0.0"),
                Evaluation.of(Layout.of(project, now)),
                Optional.of(Evaluation.of(Layout.of(earlier, before))),
                List.of());
    }

    private static Document moved() {
        return document(project(), is(), project(), was());
    }

    private static ChangeTables changes(Document document) {
        return document.tables().changes().orElseThrow();
    }

    private static Map<String, Integer> kinds(Document document) {
        return changes(document).kinds().rows().stream()
                .collect(Collectors.toMap(KindOfChange::kind, KindOfChange::count));
    }

    private static List<String> cells(Document document, String of) {
        return changes(document).cells().rows().stream()
                .filter(each -> each.id().equals(of))
                .map(each -> each.cell() + " " + each.before() + " > " + each.now())
                .toList();
    }

    @Nested
    class Tables {
        @Test
        void holdOnlyCellsThatChanged() {
            assertThat(cells(moved(), "one")).contains("Slots 1 > 9").noneMatch(each -> each.startsWith("Panel"));
            assertThat(cells(moved(), "two")).contains("Output 2 > 5").noneMatch(each -> each.startsWith("Slots"));
            assertThat(cells(moved(), "three")).isEmpty();
            assertThat(changes(moved()).cells().rows())
                    .extracting(ChangedCell::panel)
                    .contains("P1");
        }

        @Test
        void areEmptyForTheSamePlan() {
            Document same = document(project(), was(), project(), was());

            assertThat(changes(same).cells().rows()).isEmpty();
            assertThat(changes(same).sheets().rows()).isEmpty();
            assertThat(kinds(same).values()).containsOnly(0);
            assertThat(same.revised().slopes()).isEmpty();
        }

        @Test
        void countMovesByKind() {
            assertThat(kinds(moved()))
                    .containsEntry("loads to another panel", 0)
                    .containsEntry("loads to other slots of their panel", 1)
                    .containsEntry("loads to another board or output", 1)
                    .containsEntry("loads new in the plan", 0)
                    .containsEntry("loads gone from the plan", 0);
        }

        @Test
        void nameTheSheetsThatChangedAndNoOthers() {
            List<String> sheets = changes(moved()).sheets().rows().stream()
                    .map(each -> (each.sheet() + " " + each.part()).strip())
                    .toList();

            assertThat(sheets)
                    .contains("Panel schedule panel P1", "Landing list board B1", "Labels for the breakers")
                    .doesNotContain("Landing list board B2", "Bill of materials");
            assertThat(changes(moved()).sheets().rows())
                    .extracting(AffectedSheet::rows)
                    .allMatch(rows -> rows > 0);
        }

        @Test
        void holdFiguresOfBothPlansAsTheirOwnEvaluationsHaveThem() {
            double before = Evaluation.of(Layout.of(project(), was()))
                    .verdict()
                    .metrics()
                    .peakInrushAmps();
            double now = Evaluation.of(Layout.of(project(), is()))
                    .verdict()
                    .metrics()
                    .peakInrushAmps();

            FigureChange peak = changes(moved()).figures().rows().stream()
                    .filter(each ->
                            each.place().equals("supply") && each.figure().equals("peak"))
                    .findFirst()
                    .orElseThrow();
            assertThat(peak.before().getAsDouble()).isCloseTo(before, within(1e-9));
            assertThat(peak.now().getAsDouble()).isCloseTo(now, within(1e-9));
        }
    }

    @Nested
    class AnotherStateOfTheProject {
        @Test
        void tellsWhatIsNewGoneAndOtherwise() {
            Project grown = aProject()
                    .boards(aBoard("B1"), aBoard("B2"))
                    .loads(aLoad("one").runningAmps(1.5), aLoad("two"), aLoad("three"), aLoad("five"))
                    .build();
            Plan now = aPlan().assignments(
                            anAssignment("one").at("P1", 1).on("B1", 1),
                            anAssignment("two").at("P1", 2).on("B1", 2),
                            anAssignment("three").at("P1", 3).on("B2", 1),
                            anAssignment("five").at("P1", 5).on("B2", 3))
                    .build();

            Document document = document(grown, now, project(), was());

            assertThat(cells(document, "five")).containsExactly("In the plan no > panel P1, slots 5");
            assertThat(cells(document, "four")).containsExactly("In the plan panel P1, slots 4 > no");
            assertThat(cells(document, "one")).anyMatch(each -> each.startsWith("Running") && each.endsWith("> 1.5"));
            assertThat(kinds(document))
                    .containsEntry("loads new in the plan", 1)
                    .containsEntry("loads gone from the plan", 1)
                    .containsEntry("loads with other data", 1);
        }
    }

    @Nested
    class Sheets {
        @Test
        void markWhatChangedAndNothingElse() throws IOException {
            String text = printed(moved());

            assertThat(text)
                    .contains("△one")
                    .contains("△two")
                    .doesNotContain("△three")
                    .doesNotContain("△four");
            assertThat(printed(document(project(), was(), project(), was())).replace("△ marks", ""))
                    .doesNotContain("△");
        }

        @Test
        void markASlotThatIsEmptyNow() {
            Document document = moved();

            assertThat(document.revised().slots()).containsExactlyInAnyOrder("P1 1", "P1 9");
        }

        @Test
        void drawBothCurvesOnOneScale() {
            Document document = moved();

            NodeChart chart = NodeChart.of(document.supply(), document.revised().before(document.supply()), 100, 20);
            assertThat(chart.lanes())
                    .allSatisfy(lane -> assertThat(lane.before()).startsWith("M0.0"));
            assertThat(NodeChart.of(document.supply(), 100, 20).lanes())
                    .allSatisfy(lane -> assertThat(lane.before()).isEmpty());
        }

        private String printed(Document document) throws IOException {
            try (PDDocument pdf = Loader.loadPDF(new PrintedSheets(document).on(PrintedSheets.Paper.A4))) {
                return new PDFTextStripper().getText(pdf).replaceAll("\\s+", " ");
            }
        }
    }
}
