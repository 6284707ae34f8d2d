package evenrise.solver.exchange;

import evenrise.model.contract.Phrase;
import evenrise.model.project.BoardType;
import evenrise.model.project.Catalogue;
import evenrise.model.project.PriceBreak;
import evenrise.model.project.Project;
import evenrise.solver.table.TableFileReader;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Prices that many bids share: a catalogue that takes the place of a project's own, and prices of types of boards by id.
 *
 * @param boards prices by the id that projects give the type
 */
public record SharedCatalogue(Catalogue catalogue, Map<String, BoardPrice> boards) {
    private static final int MOST_NAMED = 8;

    /** @param price 0 where it is not known */
    public record BoardPrice(double price, List<PriceBreak> breaks) {
        public BoardPrice {
            breaks = List.copyOf(breaks);
        }
    }

    /**
     * What a file holds.
     *
     * @param catalogue empty where there are problems
     * @param problems each with its place
     */
    public record Read(Optional<SharedCatalogue> catalogue, List<String> problems) {}

    public SharedCatalogue {
        boards = new LinkedHashMap<>(boards);
    }

    /**
     * Of a workbook or a table of values.
     *
     * @throws IOException with a message for the user where the file cannot be read at all
     */
    public static Read read(Path file) throws IOException {
        return PriceTableReader.read(
                TableFileReader.read(file), file.getFileName().toString());
    }

    /** The project with these prices; which boards may reach which panels stays as the project has it. */
    public Project on(Project project) {
        boolean reachesAll = project.catalogue().map(Catalogue::boardsReachAll).orElse(catalogue.boardsReachAll());
        List<BoardType> types = project.boardTypes().stream()
                .map(type -> Optional.ofNullable(boards.get(type.id()))
                        .map(price -> type.with()
                                .price(price.price())
                                .priceBreaks(price.breaks())
                                .build())
                        .orElse(type))
                .toList();
        return project.with()
                .catalogue(Optional.of(catalogue.withBoardsReachAll(reachesAll)))
                .boardTypes(types)
                .build();
    }

    /** What of its boards does not meet the project's, in sentences. */
    public List<String> remarks(Project project) {
        List<String> remarks = new ArrayList<>();
        List<String> ids = project.boardTypes().stream().map(BoardType::id).toList();
        List<String> own = ids.stream().filter(id -> !boards.containsKey(id)).toList();
        if (!own.isEmpty()) {
            remarks.add("board types that the catalogue does not price keep the project's own price, where it has one: "
                    + Phrase.quoted(own, MOST_NAMED) + ".");
        }
        List<String> unused =
                boards.keySet().stream().filter(id -> !ids.contains(id)).toList();
        if (!unused.isEmpty()) {
            remarks.add(
                    "board types of the catalogue that the project does not have are left out, for outputs and times"
                            + " are the project's: " + Phrase.quoted(unused, MOST_NAMED) + ".");
        }
        return remarks;
    }
}
