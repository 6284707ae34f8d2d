package evenrise.solver.engine.start;

import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.IndexSet;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;

/**
 * Moves whole blocks of loads from board to board, or exchanges two, until no panel is crowded and every block has a
 * board: what takes the search, which moves loads with their slots and outputs and times, many steps through broken
 * rules, is one step here, and costs next to nothing.
 *
 * <p>An annealing on the strain of the filling, from a seed of its own: the same project is always levelled alike.
 */
final class Levelling {
    private static final int MOVES_PER_BLOCK = 200;
    /** To bring loads from one source to another, others make way first. */
    private static final int MOVES_BETWEEN_SOURCES = 100_000;

    /** While a block has no board: hot enough that others make way, since only they are drawn. */
    private static final double PLACING = 5;

    private static final double HOT = 0.2;
    private static final double COLD = 0.05;

    /** A block without a board is as bad as a board out of turn, or a panel that is a tenth too full. */
    private static final double UNPLACED = 40;

    /** So many others may be put out for one that has few boards to go to. */
    private static final double SCARCE = 10;

    private static final int MOST_EVICTED = 6;
    private static final int DRAWS = 20;

    /** One move in so many, where there are several sources, clears a board. */
    private static final int CLEARED = 4;

    /** One move in so many exchanges all that two boards switch. */
    private static final int WHOLE_BOARDS = 4;

    private final CompiledProject compiled;
    private final Filling filling;
    private final List<int[]> blocks;
    private final int[] blockOf;
    private final int[] boardOf;
    private final List<List<Integer>> onBoard = new ArrayList<>();
    private final SplittableRandom random = new SplittableRandom(1);
    /** Blocks without a board, of those that any board may take. */
    private final IndexSet unplaced;

    private final List<Home> undo = new ArrayList<>();
    private double unplacedCost;

    /** Where a block was. */
    private record Home(int block, int board, int[] panels) {}

    /** @param blocks all blocks, some of them without a board */
    Levelling(CompiledProject compiled, Filling filling, List<int[]> blocks) {
        this.compiled = compiled;
        this.filling = filling;
        this.blocks = blocks;
        unplaced = new IndexSet(blocks.size());
        blockOf = new int[compiled.loadCount()];
        boardOf = new int[blocks.size()];
        for (int board = 0; board < compiled.boardCount; board++) {
            onBoard.add(new ArrayList<>());
        }
        for (int block = 0; block < boardOf.length; block++) {
            for (int load : blocks.get(block)) {
                blockOf[load] = block;
            }
            boardOf[block] = filling.boards.boards()[blocks.get(block)[0]];
            if (boardOf[block] == CompiledProject.NONE && nearby(block).length > 0) {
                setUnplaced(block, true);
            } else if (boardOf[block] != CompiledProject.NONE) {
                onBoard.get(boardOf[block]).add(block);
            }
        }
    }

    /** @return the blocks that have no board after it either */
    List<int[]> level() {
        int moves = MOVES_PER_BLOCK * blocks.size();
        if (filling.panels.hasSeveralSources() && moves > 0) {
            moves = Math.max(moves, MOVES_BETWEEN_SOURCES);
        }
        for (int move = 0; move < moves && isStrained(); move++) {
            // What finds no board in half of the moves must not keep the rest from being levelled.
            boolean placing = unplaced.size() > 0 && move < moves / 2;
            int block = placing ? drawUnplaced() : drawStrained();
            tryOne(block, placing ? PLACING : HOT * Math.pow(COLD / HOT, move / (double) moves));
        }
        return IntStream.range(0, boardOf.length)
                .filter(block -> boardOf[block] == CompiledProject.NONE)
                .mapToObj(blocks::get)
                .toList();
    }

    private boolean isStrained() {
        return filling.panels.hasSeveralSources()
                || unplaced.size() > 0
                || filling.panels.crowded().size() > 0
                || filling.boards.outOfTurn().size() > 0;
    }

    private void tryOne(int block, double temperature) {
        int[] near = nearby(block);
        int from = boardOf[block];
        int to = near.length == 0 ? from : near[random.nextInt(near.length)];
        if (to == from) {
            return;
        }
        double before = cost();
        undo.clear();
        take(block);
        if (filling.panels.hasSeveralSources() && random.nextInt(CLEARED) == 0) {
            clearFor(block, to);
        } else if (random.nextInt(WHOLE_BOARDS) == 0) {
            exchangeBoards(block, to, from == CompiledProject.NONE ? near[random.nextInt(near.length)] : from);
        } else if (from != CompiledProject.NONE) {
            exchange(block, from, to);
        } else {
            makeRoom(block, to);
        }
        double rise = cost() - before;
        if (rise > 0 && random.nextDouble() >= Math.exp(-rise / temperature)) {
            undo.forEach(step -> remove(step.block()));
            undo.forEach(this::restore);
        }
    }

    /** A block goes to another board; one from there comes back for it, by chance or where there is no room. */
    private void exchange(int block, int from, int to) {
        boolean comesBack = random.nextBoolean();
        if (comesBack || !put(block, to)) {
            int other = evict(to);
            put(block, to);
            putWhereAllowed(other, from);
        }
    }

    /** A block without a board takes one, and whoever is in its way is without. */
    private void makeRoom(int block, int to) {
        for (int i = 0; !put(block, to) && i < MOST_EVICTED; i++) {
            evict(to);
        }
    }

    /** Two boards change all that they switch, as far as it fits, and a block without a board joins one of them. */
    private void exchangeBoards(int block, int one, int other) {
        List<Integer> ofOne = List.copyOf(onBoard.get(one));
        List<Integer> ofOther = one == other ? List.of() : List.copyOf(onBoard.get(other));
        ofOne.forEach(this::take);
        ofOther.forEach(this::take);
        put(block, one);
        ofOther.forEach(moved -> putWhereAllowed(moved, one));
        ofOne.forEach(moved -> putWhereAllowed(moved, other));
    }

    /** A block has another board for itself, and whoever was there goes wherever there is room, to it as well. */
    private void clearFor(int block, int to) {
        List<Integer> there = List.copyOf(onBoard.get(to));
        there.forEach(this::take);
        put(block, to);
        for (int moved : there) {
            int[] near = nearby(moved);
            int start = random.nextInt(near.length);
            for (int i = 0; i < near.length && !put(moved, near[(start + i) % near.length]); i++) {
                // the next board that may take it
            }
        }
    }

    /** Takes any block off a board; {@link CompiledProject#NONE} where there is none. */
    private int evict(int board) {
        List<Integer> there = onBoard.get(board);
        if (there.isEmpty()) {
            return CompiledProject.NONE;
        }
        int block = there.get(random.nextInt(there.size()));
        take(block);
        return block;
    }

    /** Takes a block off its board, and notes the way back. */
    private void take(int block) {
        undo.add(new Home(block, boardOf[block], filling.panels.panelsOf(blocks.get(block))));
        remove(block);
    }

    private int[] nearby(int block) {
        return compiled.nearbyBoards[blocks.get(block)[0]];
    }

    private void putWhereAllowed(int block, int board) {
        if (block != CompiledProject.NONE && Arrays.binarySearch(nearby(block), board) >= 0) {
            put(block, board);
        }
    }

    private double cost() {
        return filling.strain() + unplacedCost;
    }

    /** A block without a board, or one that is on a board which that may take. */
    private int drawUnplaced() {
        int block = unplaced.get(random.nextInt(unplaced.size()));
        return random.nextBoolean() ? block : onAnyOf(nearby(block), block);
    }

    /** A block that is part of what strains; now and then any. */
    private int drawStrained() {
        int any = random.nextInt(boardOf.length);
        if (filling.panels.hasSeveralSources() && random.nextInt(4) == 0) {
            return drawLargest(any);
        }
        IndexSet crowded = filling.panels.crowded();
        IndexSet outOfTurn = filling.boards.outOfTurn();
        int strained = crowded.size() + outOfTurn.size();
        if (strained == 0 || random.nextInt(4) == 0) {
            return any;
        }
        int drawn = random.nextInt(strained);
        if (drawn >= crowded.size()) {
            int board = outOfTurn.get(drawn - crowded.size());
            return onAnyOf(new int[] {board, compiled.after[board]}, any);
        }
        int[] panels = compiled.tree.panelsBelow[crowded.get(drawn)];
        int panel = panels.length == 1 ? panels[0] : panels[random.nextInt(panels.length)];
        List<Integer> loads = filling.panels.loadsIn(panel);
        if (loads.isEmpty()) {
            return any;
        }
        int load = loads.get(random.nextInt(loads.size()));
        return compiled.needsOutput[load] ? blockOf[load] : any;
    }

    /** A block with one of the largest inrushes that its source must bear, where a few draws meet one. */
    private int drawLargest(int other) {
        for (int i = 0; i < DRAWS; i++) {
            int block = random.nextInt(boardOf.length);
            for (int load : blocks.get(block)) {
                if (filling.panels.isLargest(load)) {
                    return block;
                }
            }
        }
        return other;
    }

    /** Any block on any of the boards, or else the other. */
    private int onAnyOf(int[] boards, int other) {
        List<Integer> there = onBoard.get(boards[random.nextInt(boards.length)]);
        return there.isEmpty() ? other : there.get(random.nextInt(there.size()));
    }

    private boolean put(int block, int board) {
        if (!filling.put(blocks.get(block), board)) {
            return false;
        }
        noteOn(block, board);
        return true;
    }

    private void restore(Home home) {
        if (home.board() != CompiledProject.NONE) {
            filling.putBack(blocks.get(home.block()), home.board(), home.panels());
            noteOn(home.block(), home.board());
        }
    }

    private void noteOn(int block, int board) {
        boardOf[block] = board;
        onBoard.get(board).add(block);
        setUnplaced(block, false);
    }

    private void setUnplaced(int block, boolean isUnplaced) {
        unplaced.set(block, isUnplaced);
        double cost = UNPLACED * (1 + SCARCE / nearby(block).length);
        unplacedCost += isUnplaced ? cost : -cost;
    }

    private void remove(int block) {
        if (boardOf[block] != CompiledProject.NONE) {
            filling.remove(blocks.get(block));
            onBoard.get(boardOf[block]).remove(Integer.valueOf(block));
            boardOf[block] = CompiledProject.NONE;
            setUnplaced(block, true);
        }
    }
}
