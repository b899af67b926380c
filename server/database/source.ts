import type { Prisma, PrismaClient } from './generated/client.js';

/** What a transaction can do: everything the client can but open another. */
export type Transaction = Prisma.TransactionClient;

/** Anything that rows can be read from: the reading connection, or a transaction. */
export type Source = PrismaClient | Transaction;
