package evenrise.model;

import evenrise.model.project.Board;
import java.util.List;
import java.util.Optional;

public final class BoardBuilder {
    private final String id;
    private String type = BoardTypeBuilder.EIGHT;
    private String panel = "P1";
    private List<String> reaches = List.of();
    private Optional<String> after = Optional.empty();

    BoardBuilder(String id) {
        this.id = id;
    }

    public BoardBuilder type(String it) {
        type = it;
        return this;
    }

    /** The panel that houses the board. */
    public BoardBuilder in(String it) {
        panel = it;
        return this;
    }

    public BoardBuilder reaches(List<String> it) {
        reaches = it;
        return this;
    }

    public BoardBuilder reaches(String... it) {
        return reaches(List.of(it));
    }

    public BoardBuilder after(String it) {
        after = Optional.of(it);
        return this;
    }

    public Board build() {
        return new Board(id, type, panel, reaches, after);
    }
}
