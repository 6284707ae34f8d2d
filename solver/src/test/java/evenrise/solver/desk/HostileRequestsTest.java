package evenrise.solver.desk;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.file.PlanFile;
import evenrise.model.file.ProjectFile;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whatever is sent by whoever has the cookie: it is answered in words, and the files stay whole. */
class HostileRequestsTest {
    private static final int ROUNDS = Integer.getInteger("evenrise.fuzz", 12);

    private static final List<String> BODIES = List.of(
            "",
            "{",
            "[]",
            "null",
            "\"x\"",
            "{\"load\": 1}",
            "{\"load\": \"lamp\", \"panel\": \"P1\", \"slot\": 7}",
            "{\"load\": \"lamp\", \"board\": \"B1\", \"output\": 3}",
            "{\"load\": \"lamp\", \"on_s\": 3}",
            "{\"load\": \"amp-1\", \"panels\": [\"P1\", \"P2\"]}",
            "{\"name\": \"../x\"}",
            "{\"list\": \"loads\", \"cells\": [{\"id\": \"lamp\", \"column\": \"poles\", \"text\": \"2\"}]}",
            "{\"list\": \"panels\", \"removed\": [\"P1\"]}",
            "{\"board\": \"B1\", \"start_delay_s\": 4, \"step_s\": 1}",
            "{\"board\": \"B1\", \"start_delay_s\": 3, \"step_s\": 0}",
            "{\"pinned\": true, \"loads\": [\"lamp\"]}",
            "{\"text\": \"a;b\\n1;2\"}",
            "{\"text\": \"" + "\\\"".repeat(50) + "\"}",
            "[".repeat(5000));

    @TempDir
    private Path folder;

    @Test
    void areAnsweredInWordsAndNothingBreaks() {
        Random chance = new Random(23);
        List<String> paths = Hall.routes(Hall.in(folder)).all().keySet().stream()
                .filter(each -> each.startsWith("POST ") && !each.contains("search"))
                .map(each -> each.substring("POST ".length()))
                .toList();
        try (OpenDesk desk = OpenDesk.on(folder, 0, Hall.JOBS)) {
            Wire wire = new Wire(desk.address());
            wire.open();
            for (int round = 0; round < ROUNDS; round++) {
                for (String path : paths) {
                    String body = changed(BODIES.get(chance.nextInt(BODIES.size())), chance);
                    Wire.Answer answer = wire.post(path, body);

                    assertThat(answer.code())
                            .as("%s %s %s", path, body, answer.body())
                            .isIn(200, 422);
                }
            }
        }

        assertThat(ProjectFile.read(folder.resolve("project.json")).value()).isPresent();
        assertThat(PlanFile.read(folder.resolve("project.plan.json")).value()).isPresent();
    }

    private static String changed(String body, Random chance) {
        StringBuilder sent = new StringBuilder(body);
        for (int i = chance.nextInt(3); i > 0 && !body.isEmpty(); i--) {
            sent.setCharAt(chance.nextInt(body.length()), (char) (32 + chance.nextInt(95)));
        }
        return sent.toString();
    }
}
