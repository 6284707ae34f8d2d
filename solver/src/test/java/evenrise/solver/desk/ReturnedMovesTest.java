package evenrise.solver.desk;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import evenrise.model.handout.Handout;
import evenrise.model.handout.PageReferee;
import evenrise.solver.desk.Wire.Answer;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A change file that came back from a page comes onto the desk. */
class ReturnedMovesTest {
    @TempDir
    private Path folder;

    private OpenDesk desk;
    private Wire wire;

    @BeforeEach
    void open() {
        desk = OpenDesk.on(Hall.in(folder), 0, Hall.JOBS);
        wire = new Wire(desk.address());
        wire.open();
        PageReferee.open(Handout.of(
                        "0".repeat(64), Hall.layout().project(), Hall.layout().plan())
                .text());
    }

    @AfterEach
    void close() {
        desk.close();
    }

    private static String request(String file) {
        return new ObjectMapper().createObjectNode().put("text", file).toString();
    }

    @Test
    void asOneChangeThatCanBeTakenBack() {
        PageReferee.move("{\"load\":\"amp-1\",\"panel\":\"P2\",\"slot\":3}");
        PageReferee.move("{\"load\":\"lamp\",\"board\":\"B1\",\"output\":4}");

        Answer taken = wire.post("/api/moves", request(PageReferee.moves()));
        String sheet = wire.get("/api/desk").body();
        Answer undone = wire.post("/api/undo", "{}");

        assertThat(taken.code()).isEqualTo(200);
        assertThat(sheet).contains("moves that came back");
        assertThat(sheet).containsPattern("\"id\":\"amp-1\"[^}]*\"panel\":\"P2\"[^}]*\"slots\":\\[3\\]");
        assertThat(sheet).containsPattern("\"id\":\"lamp\"[^}]*\"output\":4");
        assertThat(undone.code()).isEqualTo(200);
        assertThat(wire.get("/api/desk").body()).containsPattern("\"id\":\"amp-1\"[^}]*\"slots\":\\[1\\]");
    }

    @Test
    void notWhereAnotherPlanLiesThere() {
        PageReferee.move("{\"load\":\"amp-1\",\"panel\":\"P2\",\"slot\":3}");
        wire.post("/api/move", "{\"load\":\"amp-2\",\"panel\":\"P2\",\"slot\":7}");

        Answer answer = wire.post("/api/moves", request(PageReferee.moves()));

        assertThat(answer.code()).isNotEqualTo(200);
        assertThat(answer.body()).contains("places or sets something else");
    }

    @Test
    void notWhereAPlaceIsTaken() {
        PageReferee.move("{\"load\":\"amp-1\",\"panel\":\"P2\",\"slot\":3}");

        Answer answer = wire.post("/api/moves", request(PageReferee.moves().replace("\"slot\":3", "\"slot\":99")));

        assertThat(answer.code()).isNotEqualTo(200);
        assertThat(answer.body()).contains("does not fit");
    }
}
