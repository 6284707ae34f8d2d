package evenrise.solver.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenrise.model.file.PlanFile;
import evenrise.model.file.ProjectFile;
import evenrise.model.handout.Handout;
import evenrise.model.handout.PageReferee;
import evenrise.model.plan.Assignment;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A change file from a page is taken in by {@code plan}. */
class TakenMovesTest {
    private static final Path PROJECT = Path.of("../datasets/meridian-hall/project.json");
    private static final Path PLAN = Path.of("src/test/resources/pictures/meridian-hall.plan.json");

    private final Jobs jobs = StandIns.withoutProofs();
    private final Project project = ProjectFile.read(PROJECT).value().orElseThrow();
    private final Plan plan = PlanFile.read(PLAN).value().orElseThrow();
    private Assignment moved;
    private int slot;

    /** A load into another slot of its panel, where that breaks no rule. */
    @BeforeEach
    void somebodyMovesALoad() {
        PageReferee.open(Handout.of("0".repeat(64), project, plan).text());
        for (Assignment each : plan.assignments()) {
            Matcher place = Pattern.compile("slots\":\\[([0-9]+)[^]]*],\"broken\":\\[]")
                    .matcher(PageReferee.slots(each.load(), each.panel()));
            if (each.board().isPresent() && place.find()) {
                moved = each;
                slot = Integer.parseInt(place.group(1));
                break;
            }
        }
        PageReferee.move(
                "{\"load\":\"" + moved.load() + "\",\"panel\":\"" + moved.panel() + "\",\"slot\":" + slot + "}");
    }

    private PlanRequest takingIn(String moves) {
        return PlanRequest.of(PROJECT)
                .withFrom(Source.file(PLAN))
                .withChanges(Source.stream(
                        new ByteArrayInputStream(moves.getBytes(StandardCharsets.UTF_8)), "back.moves.json"));
    }

    private static Assignment of(Plan plan, String load) {
        return plan.assignments().stream()
                .filter(each -> each.load().equals(load))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void aloneItIsAllThatIsDone() {
        Plan taken = jobs.plan(takingIn(PageReferee.moves())).plan();

        assertThat(of(taken, moved.load()).slot()).isEqualTo(slot);
        assertThat(of(taken, moved.load()).output()).isEqualTo(moved.output());
        assertThat(taken.assignments())
                .filteredOn(each -> !each.load().equals(moved.load()))
                .usingRecursiveFieldByFieldElementComparatorOnFields("load", "panel", "slot", "board", "output")
                .isEqualTo(plan.assignments().stream()
                        .filter(each -> !each.load().equals(moved.load()))
                        .toList());
        assertThat(taken.madeBy().orElseThrow().movesAllowed()).hasValue(0);
    }

    @Test
    void aSearchThatGoesOnFromThereKeepsWhatWasMoved() {
        PlanRequest request = takingIn(PageReferee.moves()).withEffort(Effort.ofMoves(2000));

        Plan found = jobs.plan(request).plan();

        assertThat(of(found, moved.load()).panel()).isEqualTo(moved.panel());
        assertThat(OptionalInt.of(of(found, moved.load()).slot())).hasValue(slot);
        assertThat(found.violations()).isEmpty();
    }

    @Test
    void theMovesOfAnotherPlanAreRefused() {
        String moves = PageReferee.moves().replaceFirst("plan_sha256\":\"....", "plan_sha256\":\"0000");

        assertThatThrownBy(() -> jobs.plan(takingIn(moves)))
                .isInstanceOf(JobFailed.class)
                .hasMessageContaining("back.moves.json")
                .hasMessageContaining("places or sets something else");
    }

    @Test
    void aMoveThatCannotBeMadeIsRefused() {
        String moves = PageReferee.moves().replace("\"slot\":" + slot, "\"slot\":999");

        assertThatThrownBy(() -> jobs.plan(takingIn(moves)))
                .isInstanceOf(JobFailed.class)
                .hasMessageContaining("does not fit at slot 999");
    }

    @Test
    void withoutThePlanThatThePageIsOfNothingIsDone() {
        PlanRequest request = PlanRequest.of(PROJECT)
                .withChanges(Source.stream(
                        new ByteArrayInputStream(PageReferee.moves().getBytes(StandardCharsets.UTF_8)), "m.json"));

        assertThatThrownBy(() -> jobs.plan(request))
                .isInstanceOf(JobFailed.class)
                .hasMessageContaining("--from PLAN");
    }

    @Test
    void aProjectThatHasChangedSinceIsTold() {
        StringBuilder told = new StringBuilder();

        jobs.plan(takingIn(PageReferee.moves()), new JobControl(noted(told), Cancellation.NEVER));

        assertThat(told).contains("another than when the page was made");
    }

    private static JobListener noted(StringBuilder told) {
        return new JobListener() {
            @Override
            public void progress(JobProgress progress) {
                // How far it is, is not asked here.
            }

            @Override
            public void note(String text) {
                told.append(text);
            }
        };
    }
}
