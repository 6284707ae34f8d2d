package evenrise.model;

import evenrise.model.project.Board;
import java.util.List;
import java.util.function.Consumer;

public final class BoardBuilder {
    private final evenrise.model.project.BoardBuilder made;

    BoardBuilder(String id) {
        made = Board.builder().id(id).type(BoardTypeBuilder.EIGHT).panel("P1");
    }

    public BoardBuilder type(String it) {
        made.type(it);
        return this;
    }

    /** The panel that houses the board. */
    public BoardBuilder in(String it) {
        made.panel(it);
        return this;
    }

    public BoardBuilder reaches(List<String> it) {
        made.reaches(it);
        return this;
    }

    public BoardBuilder reaches(String... it) {
        return reaches(List.of(it));
    }

    public BoardBuilder after(String it) {
        made.after(it);
        return this;
    }

    /** Sets what has no method of its own here. */
    public BoardBuilder with(Consumer<evenrise.model.project.BoardBuilder> more) {
        more.accept(made);
        return this;
    }

    public Board build() {
        return made.build();
    }
}
