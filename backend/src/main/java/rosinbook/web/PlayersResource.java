package rosinbook.web;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.UUID;
import rosinbook.access.Invitations;
import rosinbook.access.KeeperStays;
import rosinbook.access.NameTaken;
import rosinbook.access.Player;
import rosinbook.access.PlayerName;
import rosinbook.notebook.InvalidContent;

/** {@code /api/players}: who plays here; the keeper invites them, and closes accounts. */
final class PlayersResource {
    private final Invitations invitations;
    private final Listening listening;

    PlayersResource(Invitations invitations, Listening listening) {
        this.invitations = invitations;
        this.listening = listening;
    }

    void register(RoutesConfig routes) {
        routes.get("/api/players", this::list);
        routes.post("/api/players", this::invite);
        routes.post("/api/players/{player}/invitation", this::inviteAgain);
        routes.delete("/api/players/{player}", this::close);
        routes.exception(
                NameTaken.class,
                (problem, exchange) -> Problems.answer(
                        exchange, new Problem(409, "name-taken", "This name is taken", problem.getMessage())));
        routes.exception(
                KeeperStays.class,
                (problem, exchange) -> Problems.answer(
                        exchange, new Problem(409, "keeper-stays", "The keeper stays", problem.getMessage())));
    }

    static UUID playerId(Context exchange) {
        return Requests.uuidIn(exchange.pathParam("player")).orElseThrow(PlayersResource::noSuchPlayer);
    }

    static Problem noSuchPlayer() {
        return new Problem(404, "no-such-player", "There is no such player", "Look them up in the list of players.");
    }

    private void list(Context exchange) {
        Answers.json(exchange, Answers.items(invitations.players(), player -> entry(player)
                .put("joined", player.hasJoined())));
    }

    private static ObjectNode entry(Player player) {
        return Answers.object()
                .put("id", player.id().toString())
                .put("name", player.name().text())
                .put("keeper", player.isKeeper());
    }

    private void invite(Context exchange) {
        PlayerName name = name(Requests.string(Requests.body(exchange, "name"), "name"));
        answer(exchange, invitations.invite(name));
    }

    private static PlayerName name(String text) {
        try {
            return new PlayerName(text);
        } catch (IllegalArgumentException problem) {
            throw new InvalidContent("/name", problem.getMessage());
        }
    }

    private void inviteAgain(Context exchange) {
        Requests.body(exchange);
        answer(exchange, invitations.inviteAgain(playerId(exchange)).orElseThrow(PlayersResource::noSuchPlayer));
    }

    private void answer(Context exchange, Invitations.Invitation invitation) {
        exchange.status(201);
        Answers.json(
                exchange,
                Answers.object()
                        .put("id", invitation.player().id().toString())
                        .put("name", invitation.player().name().text())
                        .put("invitation", listening.linkBase(exchange.header("Host")) + "/join/" + invitation.token())
                        .put("endsAt", invitation.endsAt().toString()));
    }

    private void close(Context exchange) {
        if (!invitations.close(playerId(exchange))) {
            throw noSuchPlayer();
        }
        exchange.status(204);
    }
}
