package evenrise.solver.desk;

import evenrise.solver.app.CompareRequest;
import evenrise.solver.app.Effort;
import evenrise.solver.app.Jobs;
import evenrise.solver.app.Source;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** The small hall with prices of everything that varies, and a number of lamps that is open. */
public final class PricedHall {
    static final String CATALOGUE = """
        "catalogue": {
          "currency": "EUR",
          "panel_types": [{"id": "small", "slots": 12, "rated_a": 125, "price": 700, "floor_square_m": 0.5},
                          {"id": "large", "slots": 24, "rated_a": 225, "price": 1200, "floor_square_m": 0.5}],
          "breakers": [{"poles": 1, "up_to_a": 63, "price": 50}, {"poles": 3, "up_to_a": 63, "price": 120}],
          "labour_per_pole": 10, "labour_per_lead": 5, "labour_per_board": 60, "labour_per_panel": 300
        },
        "quantities": [{"name": "lamps", "loads": ["lamp"], "low": 1, "high": 3}],
        """;

    /** One a test class would do; none of them proves anything beyond the usual bounds. */
    static final Jobs JOBS = Hall.JOBS;

    private PricedHall() {}

    public static Path in(Path folder) {
        try {
            Hall.in(folder);
            Files.writeString(
                    folder.resolve("project.json"),
                    Hall.PROJECT
                            .replace("\"price\": 0", "\"price\": 310")
                            .replace("\"loads\": [", CATALOGUE + "\"loads\": ["));
            return folder;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static Desk desk(Path folder) {
        DeskFiles files = DeskFiles.of(folder);
        DeskState state = new DeskState(
                files.readProject().value().orElseThrow(),
                files.readProject().notes(),
                Hall.state().plan());
        return new Desk(files, Optional.of(state), List.of());
    }

    static DeskRoutes routes(Desk desk, Path folder) {
        DeskFiles files = DeskFiles.of(folder);
        return new DeskRoutes(DeskParts.of(new DeskWork(desk, files, JOBS), desk, files, JOBS));
    }

    /** What {@code compare} is asked with the usual spare. */
    static CompareRequest request(Path folder, Path into) {
        return new CompareRequest(
                Source.file(folder.resolve("project.json")),
                into,
                Optional.empty(),
                Optional.empty(),
                Effort.ofMoves(200).withThreads(1),
                6,
                Optional.empty(),
                true,
                0,
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }
}
