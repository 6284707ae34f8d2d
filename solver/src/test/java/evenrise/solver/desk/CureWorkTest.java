package evenrise.solver.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.file.Json;
import evenrise.solver.desk.CureAnswers.CureOrderView;
import evenrise.solver.desk.CureAnswers.CureSheetView;
import evenrise.solver.desk.CureAnswers.CureWrittenView;
import evenrise.solver.desk.CureAnswers.CuresView;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CureWorkTest {
    private static final int MOST_LOOKS = 100_000_000;

    @TempDir
    private Path folder;

    private DeskRoutes routes;

    @BeforeEach
    void open() {
        routes = Hall.routes(Hall.in(folder));
    }

    private Record asked(String path, String body) {
        return routes.of("POST", path).orElseThrow().answer(body.getBytes(StandardCharsets.UTF_8));
    }

    private CuresView view() {
        return (CuresView) routes.of("GET", "/api/cures").orElseThrow().answer(new byte[0]);
    }

    private CuresView searched(String more) {
        asked("/api/cures/begin", "{\"moves\": 300" + more + "}");
        CuresView view = view();
        for (int looks = 0; view.state().equals("running") && looks < MOST_LOOKS; looks++) {
            Thread.onSpinWait();
            view = view();
        }
        return view;
    }

    @Test
    void aSearchChangesNothingOnTheDesk() {
        Record before = routes.of("GET", "/api/desk").orElseThrow().answer(new byte[0]);

        CuresView found = searched("");

        assertThat(found.state()).isEqualTo("found");
        assertThat(found.headline()).isEqualTo("The plan as built keeps every hard rule; moves only make it better.");
        assertThat(found.cures()).isNotEmpty();
        assertThat(found.isOfNow()).isTrue();
        assertThat(routes.of("GET", "/api/desk").orElseThrow().answer(new byte[0]))
                .isEqualTo(before);
    }

    @Test
    void aCureTakesThePlaceOfThePlanWithWhatWasMeasuredAndIsTakenBack() {
        CuresView found = searched(", \"readings\": \"load,phase,running_a\\namp-1,A,9.5\\n\"");
        DeskAnswers.DeskSheet before = desk();

        DeskAnswers.DeskSheet after = (DeskAnswers.DeskSheet) asked("/api/cures/take", "{\"cure\": 0}");

        assertThat(after.plan().orElseThrow().metrics().objective())
                .isCloseTo(found.cures().get(0).objective(), within(1e-9));
        assertThat(view().isOfNow()).isFalse();
        asked("/api/undo", "{}");
        assertThat(desk().plan()).isEqualTo(before.plan());
    }

    private DeskAnswers.DeskSheet desk() {
        return (DeskAnswers.DeskSheet)
                routes.of("GET", "/api/desk").orElseThrow().answer(new byte[0]);
    }

    @Test
    void aCureOfAnotherPlanIsNotTaken() {
        searched("");
        asked("/api/move", "{\"load\": \"lamp\"}");

        assertThatThrownBy(() -> asked("/api/cures/take", "{\"cure\": 0}"))
                .hasMessageContaining("has changed since this search began");
    }

    @Test
    void whatIsChangedAfterwardsIsTold() {
        searched("");
        asked("/api/move", "{\"load\": \"lamp\"}");

        assertThat(view().isOfNow()).isFalse();
    }

    @Test
    void theOrderOfACureIsSaidWithItsSheetsAndWritten() {
        CuresView found = searched("");
        int last = found.cures().size() - 1;

        CureOrderView order = (CureOrderView) asked("/api/cures/order", "{\"cure\": " + last + "}");

        assertThat(order.search()).isEqualTo(found.search());
        assertThat(order.work().stages()).isNotEmpty();
        CureSheetView sheet = (CureSheetView) asked("/api/cures/sheet", "{\"cure\": " + last + ", \"page\": 999}");
        assertThat(sheet.page()).isEqualTo(sheet.pages()).isGreaterThan(1);
        assertThat(sheet.png()).startsWith("iVBORw0KGgo");
        CureWrittenView written =
                (CureWrittenView) asked("/api/cures/write", "{\"cure\": " + last + ", \"name\": \"monday\"}");
        assertThat(written.files()).contains("work.json", "work-a4.pdf", "front.json");
        assertThat(folder.resolve("monday/work.json")).isNotEmptyFile();
        assertThat(Json.compact(order)).contains("\"dead_panels\"");
    }

    @Test
    void nothingIsWrittenOutsideTheFolder() {
        searched("");

        assertThatThrownBy(() -> asked("/api/cures/write", "{\"cure\": 0, \"name\": \"../monday\"}"))
                .hasMessageContaining("nothing here can be called");
    }

    @Test
    void readingsThatCannotBeUsedAreToldByTheirLineAndNotByWhereTheyLay() {
        CuresView failed = searched(", \"readings\": \"load,phase,running_a\\nnobody,A,3\\n\"");

        assertThat(failed.state()).isEqualTo("failed");
        assertThat(failed.words())
                .anySatisfy(each -> assertThat(each).contains("'nobody'").doesNotContain("evenrise-desk"));
    }

    @Test
    void aNightHasMinutes() {
        assertThatThrownBy(() -> asked("/api/cures/begin", "{\"nights\": [120, 0]}"))
                .hasMessageContaining("a night has more than 0");
    }

    @Test
    void whatIsToStayLiveHasToBeThere() {
        CuresView failed = searched(", \"stay_live\": [\"P9\"]");

        assertThat(failed.words()).singleElement().asString().contains("'P9' is to stay live, but is no load");
    }

    @Test
    void workLeadsToAKeptPlanAsItIs() {
        asked("/api/branches/keep", "{\"name\": \"as on the wall\"}");
        asked("/api/move", "{\"load\": \"amp-1\", \"panel\": \"P2\", \"slot\": 3}");
        asked("/api/branches/keep", "{\"name\": \"new\"}");
        asked("/api/branches/open", "{\"name\": \"as on the wall\"}");

        CuresView found = searched(", \"to\": \"new\"");

        assertThat(found.kept()).contains("new", "as on the wall");
        assertThat(found.cures())
                .singleElement()
                .satisfies(only -> assertThat(only.moves()).isEqualTo(1));
        CureOrderView order = (CureOrderView) asked("/api/cures/order", "{\"cure\": 0}");
        assertThat(Json.compact(order)).contains("amp-1").doesNotContain("amp-2 goes");
    }

    @Test
    void workLeadsToNoPlanThatIsNotKept() {
        assertThat(searched(", \"to\": \"nowhere\"").state()).isEqualTo("failed");
        assertThat(searched(", \"to\": \"../project\"").words()).anyMatch(each -> each.contains("cannot be called"));
    }

    @Test
    void beforeASearchThereIsNoOrder() {
        assertThatThrownBy(() -> asked("/api/cures/order", "{\"cure\": 0}"))
                .hasMessageContaining("no search has found a cure yet");
    }
}
