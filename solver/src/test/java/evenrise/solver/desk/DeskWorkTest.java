package evenrise.solver.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenrise.solver.desk.DeskAnswers.DeskSheet;
import evenrise.solver.desk.DeskAnswers.EditedView;
import evenrise.solver.desk.DeskAnswers.LoadView;
import evenrise.solver.desk.DeskRequests.OneCell;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DeskWorkTest {
    @TempDir
    private Path folder;

    private DeskWork work;

    @BeforeEach
    void open() {
        work = Hall.work(Hall.in(folder));
    }

    private static LoadView load(DeskSheet sheet, String id) {
        return sheet.plan().orElseThrow().loads().stream()
                .filter(each -> each.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    private EditedView edit(OneCell... cells) {
        return work.edit(new DeskRequests.Cells("loads", List.of(), List.of(cells)));
    }

    private String cell(String id, String column) {
        DeskAnswers.TableView table = work.table("loads");
        int at = table.columns().stream()
                .map(DeskAnswers.ColumnView::path)
                .toList()
                .indexOf(column);
        return table.rows().stream()
                .filter(row -> row.get(0).equals(id))
                .findFirst()
                .orElseThrow()
                .get(at);
    }

    @Nested
    class Undo {
        /** Every kind of change there is, one after another, taken back one after another. */
        @Test
        void goesOverEverythingAndRedoComesBack() {
            List<DeskSheet> states = new ArrayList<>(List.of(work.sheet()));
            List<Runnable> changes = List.of(
                    () -> work.move(Hall.toSlot("amp-1", "P2", 3)),
                    () -> work.move(Hall.toOutput("amp-1", "B2", 4)),
                    () -> work.set(new DeskRequests.Setting("B2", 4, 1)),
                    () -> edit(new OneCell("lamp", "running_a", "2.5")),
                    () -> work.pin(new DeskRequests.Pin(true, false, List.of("P1"), List.of(), List.of(), List.of())),
                    () -> work.move(Hall.away("lamp")));
            for (Runnable change : changes) {
                change.run();
                states.add(work.sheet());
            }

            for (int i = states.size() - 2; i >= 0; i--) {
                assertThat(work.undo().plan()).isEqualTo(states.get(i).plan());
            }
            assertThat(work.sheet().undo()).isEmpty();
            for (int i = 1; i < states.size(); i++) {
                assertThat(work.redo().plan()).isEqualTo(states.get(i).plan());
            }
            assertThatThrownBy(work::redo).hasMessageContaining("nothing was taken back");
        }

        @Test
        void saysWhatWouldBeTakenBack() {
            assertThat(work.move(Hall.toSlot("amp-1", "P2", 3)).undo()).contains("amp-1 to P2, slot 3");
        }
    }

    @Nested
    class Cells {
        @Test
        void areTakenInTogether() {
            EditedView edited = edit(new OneCell("amp-1", "running_a", "7,5"), new OneCell("amp-1", "name", "Left"));

            assertThat(edited.isTaken()).isTrue();
            assertThat(cell("amp-1", "running_a")).isEqualTo("7.5");
            assertThat(cell("amp-1", "name")).isEqualTo("Left");
        }

        /** Somebody takes back, or writes in another window, while the cells are read. */
        @Test
        void standThoughAnotherHandWritesAtTheSameTime() {
            List<String> loads = List.of("dsp", "amp-1", "amp-2", "hoist", "lamp");

            loads.parallelStream().forEach(load -> {
                for (int i = 1; i <= 4; i++) {
                    assertThat(edit(new OneCell(load, "running_a", "1." + i)).isTaken())
                            .isTrue();
                }
            });

            assertThat(loads)
                    .allSatisfy(load -> assertThat(cell(load, "running_a")).isEqualTo("1.4"));
        }

        @Test
        void thatDoNotFitChangeNothingAndSayWhereWhyAndTheCure() {
            EditedView edited = edit(new OneCell("amp-1", "poles", "5"), new OneCell("amp-1", "name", "Left"));

            assertThat(edited.isTaken()).isFalse();
            assertThat(edited.misfits()).singleElement().satisfies(misfit -> {
                assertThat(misfit.id()).contains("amp-1");
                assertThat(misfit.column()).contains("poles");
                assertThat(misfit.message()).contains("5", "at most 3");
            });
            assertThat(cell("amp-1", "name")).isEmpty();
        }

        @Test
        void thatAreNoNumberSayWhatIsExpected() {
            assertThat(edit(new OneCell("amp-1", "running_a", "many"))
                            .misfits()
                            .get(0)
                            .message())
                    .contains("'many'", "expected a number");
        }

        @Test
        void ofANewIdAddALoadWithoutAPlace() {
            EditedView edited = edit(
                    new OneCell("fan", "role", "auxiliary"),
                    new OneCell("fan", "breaker_a", "16"),
                    new OneCell("fan", "running_a", "1"));

            assertThat(edited.isTaken()).isTrue();
            assertThat(work.sheet().plan().orElseThrow().unplaced()).containsExactly("fan");
        }

        @Test
        void ofANewIdThatLacksSomethingSayWhat() {
            EditedView edited = edit(new OneCell("fan", "role", "auxiliary"));

            assertThat(edited.misfits()).anySatisfy(misfit -> {
                assertThat(misfit.id()).contains("fan");
                assertThat(misfit.column()).contains("breaker_a");
            });
        }

        @Test
        void takenOutLeaveThePlanToo() {
            work.edit(new DeskRequests.Cells("loads", List.of("lamp"), List.of()));

            assertThat(work.sheet().plan().orElseThrow().loads())
                    .extracting(LoadView::id)
                    .doesNotContain("lamp");
            assertThat(work.sheet().plan().orElseThrow().violations()).isEmpty();
        }
    }

    @Nested
    class Pinning {
        @Test
        void holdsALoadThroughASearchAndSettingFreeLetsGo() {
            DeskSheet pinned =
                    work.pin(new DeskRequests.Pin(true, false, List.of(), List.of(), List.of(), List.of("amp-2")));

            assertThat(load(pinned, "amp-2").pinned()).isTrue();
            DeskSheet free =
                    work.pin(new DeskRequests.Pin(false, false, List.of(), List.of(), List.of(), List.of("amp-2")));
            assertThat(load(free, "amp-2").pinned()).isFalse();
        }
    }

    @Nested
    class Searching {
        private DeskAnswers.SearchView searched(int moves) {
            work.begin(new DeskRequests.Search(
                    OptionalDouble.empty(), OptionalDouble.of(moves), OptionalInt.empty(), false));
            DeskAnswers.SearchView view = work.search();
            while (view.state().equals("running")) {
                Thread.onSpinWait();
                view = work.search();
            }
            return view;
        }

        @Test
        void changesNothingUntilItIsTakenAndThenCanBeTakenBack() {
            work.move(Hall.away("lamp"));
            DeskSheet before = work.sheet();
            DeskAnswers.SearchView found = searched(2_000);

            assertThat(found.state()).isEqualTo("found");
            assertThat(work.sheet()).isEqualTo(before);
            DeskSheet taken = work.take();
            assertThat(taken.plan().orElseThrow().unplaced()).isEmpty();
            assertThat(taken.plan().orElseThrow().metrics().objective())
                    .isEqualTo(found.objective().getAsDouble());
            assertThat(found.provenObjective())
                    .isLessThanOrEqualTo(found.objective().getAsDouble());
            assertThat(work.undo().plan()).isEqualTo(before.plan());
        }

        @Test
        void leavesWhatIsPinnedWhereItIs() {
            work.move(Hall.toSlot("amp-1", "P2", 12));
            work.pin(new DeskRequests.Pin(true, false, List.of(), List.of(), List.of(), List.of("amp-1")));

            searched(2_000);

            assertThat(load(work.take(), "amp-1").slots()).containsExactly(12);
        }

        @Test
        void ofAProjectThatHasChangedSinceIsNotTaken() {
            searched(200);
            edit(new OneCell("lamp", "running_a", "2.5"));

            assertThatThrownBy(() -> work.take()).hasMessageContaining("has changed since this search began");
        }
    }

    @Nested
    class KeptPlans {
        @Test
        void standBesideThatOnTheDeskAndComeBack() {
            DeskSheet first = work.sheet();
            work.keep(new DeskRequests.Named("as drawn"));
            work.move(Hall.toSlot("amp-1", "P2", 5));

            DeskAnswers.BranchesView beside = work.branches();

            assertThat(beside.branches()).hasSize(2);
            assertThat(beside.branches().get(1).name()).isEqualTo("as drawn");
            assertThat(beside.branches().get(1).moved()).isEqualTo(2);
            assertThat(work.open(new DeskRequests.Named("as drawn")).plan()).isEqualTo(first.plan());
            assertThat(folder.resolve("as drawn.plan.json")).exists();
        }

        @Test
        void cannotBeKeptOutsideTheFolderNorInPlaceOfThePlan() {
            for (String name : List.of("../escape", "a/b", ".hidden", "project", "", "a\u0000b")) {
                assertThatThrownBy(() -> work.keep(new DeskRequests.Named(name)))
                        .hasMessageContaining("a plan cannot be called");
            }
        }
    }

    @Nested
    class Questions {
        @Test
        void areAnsweredOfALoadAPeakAndARule() {
            assertThat(work.why(new DeskRequests.Why(Optional.of("amp-1"), Optional.empty()))
                            .lines())
                    .anyMatch(line -> line.contains("amp-1"));
            assertThat(work.why(new DeskRequests.Why(Optional.empty(), Optional.empty()))
                            .lines())
                    .anyMatch(line -> line.contains("amp-2"));
            assertThat(work.why(new DeskRequests.Why(Optional.empty(), Optional.of("rating")))
                            .lines())
                    .anyMatch(line -> line.contains("rating"));
        }
    }

    @Nested
    class PastedLists {
        private static final String LIST =
                "Qty\tName\tRoom\tWatts\n2\tDSP unit\tRack room\t200\n4\tAmplifier 4 channels\tRack room\t1500\n";

        @Test
        void areReadWithGuessesToldAndNothingChanged() {
            DeskSheet before = work.sheet();

            DeskAnswers.ReadListView read = work.read(new DeskRequests.PastedList(LIST, "Pasted", Optional.empty()));

            assertThat(read.loads()).isPositive();
            assertThat(read.guesses()).isNotEmpty();
            assertThat(work.sheet()).isEqualTo(before);
        }

        @Test
        void becomeTheProjectWhenTheyAreTakenAndCanBeTakenBack() {
            DeskSheet before = work.sheet();

            DeskSheet taken = work.takeList(new DeskRequests.PastedList(LIST, "Pasted", Optional.empty()));

            assertThat(taken.plan().orElseThrow().name()).isEqualTo("Pasted");
            assertThat(taken.plan().orElseThrow().unplaced()).isNotEmpty();
            assertThat(work.undo().plan()).isEqualTo(before.plan());
        }
    }
}
